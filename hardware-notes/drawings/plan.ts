import { HEAD, OUTER_FACE, onLampAxis } from './head-geometry.ts';
import { Sheet } from './sheet.ts';
import type { Point } from './sheet.ts';

const SCALE = 2.3;
const CENTRE = { x: 118, y: 112 };
const polar = (radius: number, degrees: number): Point => ({
  x: CENTRE.x + radius * SCALE * Math.cos((degrees * Math.PI) / 180),
  y: CENTRE.y - radius * SCALE * Math.sin((degrees * Math.PI) / 180),
});

/** An ellipse on the 45-degree face, seen from above: shortened along the radius. */
function pocket(sheet: Sheet, degrees: number, group: 'A' | 'B'): void {
  const centre = polar(onLampAxis(OUTER_FACE).r, degrees);
  const across = (HEAD.pocketDiameter / 2) * SCALE;
  sheet.raw(
    `<ellipse cx="${centre.x.toFixed(2)}" cy="${centre.y.toFixed(2)}" rx="${(across * Math.SQRT1_2).toFixed(2)}" ry="${across.toFixed(2)}" ` +
      `transform="rotate(${-degrees} ${centre.x.toFixed(2)} ${centre.y.toFixed(2)})" fill="${group === 'A' ? '#fde68a' : '#fed7aa'}" stroke="#111" stroke-width="0.4"/>`,
  );
  sheet.text({ x: centre.x, y: centre.y + 1.2 }, group, { anchor: 'middle', weight: 'bold' });
  sheet.line('axis', polar(0, degrees), polar(HEAD.bodyRadius + 8, degrees));
}

function outlines(sheet: Sheet): void {
  const half = (HEAD.plateSide / 2) * SCALE;
  sheet.box({ x: CENTRE.x - half, y: CENTRE.y - half }, 2 * half, 2 * half, '#fff');
  const rail = HEAD.railWidth * SCALE;
  for (const y of [CENTRE.y - half, CENTRE.y + half - rail]) sheet.box({ x: CENTRE.x - half, y }, 2 * half, rail, 'none', 'hidden');
  for (const degrees of [45, 135, 225, 315]) {
    // The corners of the plate: screws from below into the body's ears.
    const screw = polar(HEAD.screwCircle / Math.SQRT2 + 4, degrees);
    const side = (turn: number, radius: number): Point => {
      const along = polar(radius, degrees);
      const angle = ((degrees + 90) * Math.PI) / 180;
      return { x: along.x + turn * 4.5 * SCALE * Math.cos(angle), y: along.y - turn * 4.5 * SCALE * Math.sin(angle) };
    };
    const far = HEAD.screwCircle / Math.SQRT2 + 8.5;
    sheet.shape([side(1, HEAD.bodyRadius - 1), side(1, far), side(-1, far), side(-1, HEAD.bodyRadius - 1)], '#f5f5f5');
    sheet.circle(screw, 1.6 * SCALE, 'edge', '#fff');
  }
  sheet.circle(CENTRE, HEAD.bodyRadius * SCALE, 'edge', '#f5f5f5');
  sheet.circle(CENTRE, HEAD.neckRadius * SCALE);
}

function platform(sheet: Sheet): void {
  const [w, h] = [HEAD.platformLength * SCALE, HEAD.platformWidth * SCALE];
  sheet.box({ x: CENTRE.x - w / 2, y: CENTRE.y - h / 2 }, w, h, 'none', 'hidden');
  sheet.circle(CENTRE, (HEAD.viewTubeDiameter / 2) * SCALE);
  sheet.circle(CENTRE, (HEAD.portDiameter / 2) * SCALE, 'hidden');
}

/** The head from above, platform shown dashed. */
export function planDrawing(): Sheet {
  const sheet = new Sheet('Head, plan', `Scale ${SCALE}:1. Seen from above; the sensor's platform and everything below are dashed.`);
  outlines(sheet);
  for (let i = 0; i < HEAD.lamps; i++) pocket(sheet, 90 + i * (360 / HEAD.lamps), i % 2 === 0 ? 'A' : 'B');
  platform(sheet);
  const half = (HEAD.plateSide / 2) * SCALE;
  const corner = { x: CENTRE.x - half, y: CENTRE.y + half };
  sheet.across(corner, { x: CENTRE.x + half, y: corner.y }, 199, `plate ${HEAD.plateSide} square`);
  sheet.upright({ x: CENTRE.x - half, y: CENTRE.y - half }, corner, 28, `${HEAD.plateSide}`);
  sheet.upright({ x: CENTRE.x + half, y: CENTRE.y - half + HEAD.railWidth * SCALE }, { x: CENTRE.x + half, y: CENTRE.y + half - HEAD.railWidth * SCALE }, 206, `${HEAD.plateSide - 2 * HEAD.railWidth} between the rails`, 0.72);
  const x = 214;
  const r = onLampAxis(OUTER_FACE).r;
  sheet.note(`pocket centres on radius ${r.toFixed(1)}, every ${360 / HEAD.lamps} deg`, { x, y: 45 }, polar(r, 30));
  sheet.note('4 ears 9 wide, 5 high, M3 inserts; screws from below', { x, y: 57 }, polar(HEAD.screwCircle / Math.SQRT2 + 4, 45));
  sheet.note(`neck dia ${2 * HEAD.neckRadius}`, { x, y: 68 }, polar(HEAD.neckRadius, 20));
  sheet.note(`view tube dia ${HEAD.viewTubeDiameter}`, { x, y: 79 }, polar(HEAD.viewTubeDiameter / 2, 10));
  sheet.note(`port dia ${HEAD.portDiameter} (below)`, { x, y: 90 }, polar(HEAD.portDiameter / 2, 0));
  sheet.note(`body dia ${2 * HEAD.bodyRadius}`, { x, y: 150 }, polar(HEAD.bodyRadius, -30));
  const ear = ((HEAD.screwCircle / Math.SQRT2 + 4) * Math.SQRT1_2 * 2).toFixed(1);
  sheet.lines({ x, y: 165 }, ['A and B: the two lamp groups,', 'turn about; one group alone and', 'both together test the linearity.', `Ear holes on a square of ${ear}.`, 'Films up to 50 wide fit between the rails.']);
  return sheet;
}
