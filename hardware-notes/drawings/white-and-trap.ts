import { HEAD } from './head-geometry.ts';
import { Sheet } from './sheet.ts';
import type { Point } from './sheet.ts';

const S = 1.7;

function trap(sheet: Sheet, o: Point): void {
  const wall = 2.4;
  const [side, height, mouth] = [HEAD.plateSide, 60, 30];
  const at = (x: number, y: number): Point => ({ x: o.x + x * S, y: o.y - y * S });
  sheet.shape([at(0, 0), at(side, 0), at(side, height), at((side + mouth) / 2, height), at((side + mouth) / 2, height - wall), at(side - wall, height - wall), at(side - wall, wall), at(wall, wall), at(wall, height - wall), at((side - mouth) / 2, height - wall), at((side - mouth) / 2, height), at(0, height)]);
  sheet.line('edge', at(wall, wall + 2), at(side - wall, wall + 34));
  // A ray mirrored in the floor, then scattered by the flock on the wall, which keeps nearly all of it.
  const rise = 32 / (side - 2 * wall);
  const floorAt = (x: number): number => wall + 2 + rise * (x - wall);
  const [inX, hitX] = [side / 2 - 6, side / 2 - 1];
  const [dx, dy] = [hitX - inX, floorAt(hitX) - height];
  const along = 2 * (rise * dx - dy) / (rise * rise + 1);
  const [outX, outY] = [dx - along * rise, dy + along];
  const wallY = floorAt(hitX) + (outY / outX) * (wall - hitX);
  sheet.line('light', at(inX, height), at(hitX, floorAt(hitX)), at(wall, wallY), at(wall + 12, floorAt(wall + 12)));
  sheet.across(at(0, 0), at(side, 0), o.y + 8, String(side));
  sheet.upright(at(0, 0), at(0, height), o.x - 6, String(height));
  sheet.across(at((side - mouth) / 2, height), at((side + mouth) / 2, height), o.y - height * S - 6, `mouth ${mouth}`);
  sheet.note('floor at 25 to 30 deg, glossy black (glass painted behind)', { x: o.x + side * S + 6, y: o.y - 60 }, at(side - 12, wall + 29));
  sheet.note(`walls ${wall}, inside black flock or velvet`, { x: o.x + side * S + 6, y: o.y - 46 }, at(side - wall, 16));
  sheet.text({ x: o.x, y: o.y - height * S - 14 }, 'Black trap', { weight: 'bold', size: 3.6 });
}

function puck(sheet: Sheet, o: Point): void {
  const at = (x: number, y: number): Point => ({ x: o.x + x * S, y: o.y - y * S });
  sheet.shape([at(0, 0), at(60, 0), at(60, 15), at(56, 15), at(56, 3), at(4, 3), at(4, 15), at(0, 15)]);
  sheet.box(at(4, 15), 52 * S, 12 * S, '#fff');
  sheet.text({ x: o.x + 30 * S, y: o.y - 8 * S }, 'white PTFE, or white in thick layers', { anchor: 'middle' });
  sheet.upright(at(56, 3), at(56, 15), o.x + 60 * S + 6, '12 (10 at least)');
  sheet.across(at(4, 15), at(56, 15), o.y - 15 * S - 5, '52');
  sheet.text({ x: o.x, y: o.y - 15 * S - 13 }, 'Reference white in its holder', { weight: 'bold', size: 3.6 });
}

/** The three things a head is set and watched with. */
export function whiteAndTrapDrawing(): Sheet {
  const sheet = new Sheet('Black trap and reference white', `Scale ${S}:1. Sections through the middle; both square or round from above.`);
  trap(sheet, { x: 30, y: 160 });
  puck(sheet, { x: 160, y: 180 });
  sheet.lines({ x: 30, y: 180 }, ['The trap is the head\'s zero: what it reads is the head\'s own flare. Its mouth is', 'wider than the port all round, so that no rim is lit.']);
  sheet.lines({ x: 160, y: 42 }, [
    'White: the same piece for every ladder. A block of PTFE 10 or more thick,',
    'sanded wet on 400 paper until evenly matte (wear a mask, catch the dust),',
    'or a matte white ceramic tile, which washes and lasts. Thin sheet lets the',
    'light through: always 10 or more, or the same white behind it.',
    'Check tile: a matte coloured ceramic tile or a painted and cured card of',
    'middle value, kept dark and clean, read in every session.',
  ]);
  return sheet;
}
