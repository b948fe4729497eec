import { HEAD } from './head-geometry.ts';
import { Sheet } from './sheet.ts';
import type { Point } from './sheet.ts';

const SCALE = 1.5;
const EAR = (HEAD.screwCircle / Math.SQRT2 + 4) * Math.SQRT1_2;

/** The plate from below. */
function face(sheet: Sheet, c: Point): void {
  const half = (HEAD.plateSide / 2) * SCALE;
  sheet.box({ x: c.x - half, y: c.y - half }, 2 * half, 2 * half, '#f5f5f5');
  const rail = HEAD.railWidth * SCALE;
  for (const y of [c.y - half, c.y + half - rail]) sheet.box({ x: c.x - half, y }, 2 * half, rail, '#cbd5e1', 'thin');
  sheet.circle(c, (HEAD.portDiameter / 2) * SCALE, 'edge', '#fff');
  sheet.circle(c, (HEAD.portDiameter / 2 + HEAD.plateThickness - HEAD.portLand) * SCALE, 'hidden');
  sheet.line('axis', { x: c.x - half - 4, y: c.y }, { x: c.x + half + 4, y: c.y });
  sheet.line('axis', { x: c.x, y: c.y - half - 4 }, { x: c.x, y: c.y + half + 4 });
  for (const sx of [1, -1])
    for (const sy of [1, -1]) {
      const hole = { x: c.x + sx * EAR * SCALE, y: c.y + sy * EAR * SCALE };
      sheet.circle(hole, 1.6 * SCALE, 'edge', '#fff');
      sheet.circle(hole, 3.2 * SCALE, 'thin');
    }
  const left = c.x - half;
  sheet.across({ x: left, y: c.y + half }, { x: c.x + half, y: c.y + half }, c.y + half + 13, String(HEAD.plateSide));
  sheet.across({ x: c.x - EAR * SCALE, y: c.y + EAR * SCALE }, { x: c.x + EAR * SCALE, y: c.y + EAR * SCALE }, c.y + half + 6, (2 * EAR).toFixed(1));
  sheet.upright({ x: left, y: c.y - half }, { x: left, y: c.y + half }, left - 13, String(HEAD.plateSide));
  sheet.upright({ x: left, y: c.y + half - rail }, { x: left, y: c.y + half }, left - 6, String(HEAD.railWidth));
  sheet.note(`port dia ${HEAD.portDiameter} +0.1`, { x: c.x + half + 6, y: c.y - 16 }, { x: c.x + (HEAD.portDiameter / 2) * SCALE, y: c.y - 1 });
  sheet.note('4 holes 3.2, sunk for M3', { x: c.x + half + 6, y: c.y - 26 }, { x: c.x + EAR * SCALE, y: c.y - EAR * SCALE });
  sheet.note('rail, below (wet films)', { x: c.x + half + 6, y: c.y - 48 }, { x: c.x + half - 3, y: c.y - half + 5 });
  sheet.text({ x: c.x, y: c.y - half - 6 }, `Plate from below, ${SCALE}:1`, { anchor: 'middle', weight: 'bold' });
}

/** The edge of the port, ten times. */
function edge(sheet: Sheet, o: Point): void {
  const s = 10;
  const { plateThickness: t, portLand: land } = HEAD;
  sheet.shape([
    o,
    { x: o.x + 40, y: o.y },
    { x: o.x + 40, y: o.y - t * s },
    { x: o.x + (t - land) * s, y: o.y - t * s },
    { x: o.x, y: o.y - land * s },
  ]);
  sheet.upright({ x: o.x + 40, y: o.y - t * s }, { x: o.x + 40, y: o.y }, o.x + 48, String(t));
  sheet.upright({ x: o.x, y: o.y - land * s }, { x: o.x, y: o.y }, o.x - 6, String(land));
  sheet.text({ x: o.x + 4, y: o.y - t * s - 3 }, 'upper side (lamps): bevel 45 deg, sharp', { size: 3 });
  sheet.text({ x: o.x + 4, y: o.y + 5 }, 'lower side (paint)', { size: 3 });
  sheet.text({ x: o.x - 2, y: o.y - t * s - 10 }, 'Edge of the port, 10:1', { weight: 'bold' });
}

/** A wet film and the white tile under the same rails: the same gap below the plate, 4 times, heights exaggerated. */
function standing(sheet: Sheet, o: Point, title: string, tile: boolean): void {
  const s = 1.2;
  const h = 12; // heights
  const width = HEAD.plateSide * s;
  const gap = HEAD.railHeight * h;
  const base = { x: o.x, y: o.y };
  sheet.text({ x: o.x, y: o.y - gap - 17 }, title, { weight: 'bold' });
  sheet.shape([{ x: o.x, y: o.y - gap }, { x: o.x + width, y: o.y - gap }, { x: o.x + width, y: o.y - gap - 10 }, { x: o.x, y: o.y - gap - 10 }]);
  sheet.shape(
    [
      { x: o.x + width / 2 - 6 * s, y: o.y - gap + 0.3 },
      { x: o.x + width / 2 + 6 * s, y: o.y - gap + 0.3 },
      { x: o.x + width / 2 + 6 * s, y: o.y - gap - 10.3 },
      { x: o.x + width / 2 - 6 * s, y: o.y - gap - 10.3 },
    ],
    '#fff',
    'thin',
  );
  const rail = HEAD.railWidth * s;
  for (const x of [o.x, o.x + width - rail]) sheet.box({ x, y: o.y - gap }, rail, gap, '#94a3b8', 'thin');
  const film = 0.15 * h;
  if (!tile) {
    sheet.box(base, width, 4, '#fff', 'thin');
    sheet.box({ x: o.x + width / 2 - 24 * s, y: o.y - film }, 48 * s, film, '#b45309', 'thin');
    sheet.note('card', { x: o.x + width + 6, y: o.y + 6 }, { x: o.x + width - 4, y: o.y + 2 });
    sheet.note('wet film, say 0.15', { x: o.x + width + 6, y: o.y }, { x: o.x + width / 2 + 20 * s, y: o.y - film / 2 });
  } else {
    for (const x of [o.x, o.x + width - rail - 1]) sheet.box({ x, y: o.y }, rail + 1, 16, 'url(#hatch)', 'thin');
    sheet.box({ x: o.x, y: o.y + 13 }, width, 6, 'url(#hatch)', 'thin');
    sheet.box({ x: o.x + rail + 2, y: o.y - film }, width - 2 * rail - 4, 11 + film, '#fff');
    sheet.box({ x: o.x + rail + 2, y: o.y + 11 }, width - 2 * rail - 4, 2, '#fde68a', 'thin');
    sheet.note('white tile, 52 square at most', { x: o.x + width + 6, y: o.y + 4 }, { x: o.x + width - rail - 6, y: o.y + 4 });
    sheet.note('paper under it until its top stands 0.15', { x: o.x + width + 6, y: o.y + 12 }, { x: o.x + width - rail - 6, y: o.y + 12 });
    sheet.text({ x: o.x + width + 6, y: o.y + 16.5 }, 'above the rim, as the film does');
    sheet.note('printed tray, 70 square; its pocket 53', { x: o.x + width + 6, y: o.y + 23 }, { x: o.x + width - 10, y: o.y + 17 });
    sheet.text({ x: o.x + width + 6, y: o.y + 27.5 }, 'square, as deep as the tile; floor 2');
  }
  sheet.upright({ x: o.x, y: o.y - gap }, { x: o.x, y: o.y }, o.x - 5, String(HEAD.railHeight));
}

/** Plate, port edge, and how the head stands on wet films and on the white tile. */
export function aperturePlateDrawing(): Sheet {
  const sheet = new Sheet('Aperture plate, rails for wet films, tile tray', 'Print the plate flat, lower side down; or cut it from 1.5 aluminium and blacken it.');
  face(sheet, { x: 78, y: 94 });
  edge(sheet, { x: 205, y: 64 });
  standing(sheet, { x: 141, y: 118 }, 'On a wet film (heights x 12)', false);
  standing(sheet, { x: 141, y: 160 }, 'On the white tile (heights x 12)', true);
  sheet.lines({ x: 30, y: 172 }, [
    'Rails: two strips of 0.5 steel or plastic shim, glued or taped on.',
    'For dry swatches take them off, and take the white without the',
    'tray: plate on tile. White and swatch always under the same gap.',
  ]);
  return sheet;
}
