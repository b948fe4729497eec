import { CAVITY_FACE, HEAD, OUTER_FACE, lampAngles, litByOneLamp, onLampAxis, seenAt } from './head-geometry.ts';
import { Sheet } from './sheet.ts';
import type { Point } from './sheet.ts';

const SCALE = 2.6;
const ORIGIN = { x: 128, y: 172 };
const at = (r: number, z: number): Point => ({ x: ORIGIN.x + r * SCALE, y: ORIGIN.y - z * SCALE });
/** Points of one side, and the same mirrored. */
const both = (draw: (side: 1 | -1) => void): void => {
  draw(1);
  draw(-1);
};

/** Along and across a lamp's axis: u from the sample outwards, v across (positive: away from the head's axis). */
function lampPoint(side: number, u: number, v: number): Point {
  const { r, z } = onLampAxis(u);
  return at(side * (r + v * Math.SQRT1_2), z - v * Math.SQRT1_2);
}

/** Where the ray from the emitter's edge at v past the lip's edge on the same side meets the sample. */
function onSample(side: number, v: number): Point {
  const lip = (Math.sign(v) * HEAD.lipDiameter) / 2;
  const slope = (lip - v) / (HEAD.emitterDistance - HEAD.lipDistance); // per mm towards the sample
  const across = (u: number): number => v + slope * (HEAD.emitterDistance - u);
  // On the sample z = 0: u = v across the axis, by the 45 degrees.
  const u = across(0) / (1 + slope);
  return lampPoint(side, u, across(u));
}

function body(sheet: Sheet, side: 1 | -1): void {
  const { bodyRadius, neckRadius, platformHeight, platformThickness, platformLength, plateThickness, viewTubeDiameter } = HEAD;
  const inner = CAVITY_FACE * Math.SQRT2;
  const outer = OUTER_FACE * Math.SQRT2;
  const tube = viewTubeDiameter / 2;
  sheet.shape([
    at(side * (inner - plateThickness), plateThickness),
    at(side * bodyRadius, plateThickness),
    at(side * bodyRadius, outer - bodyRadius),
    at(side * neckRadius, outer - neckRadius),
    at(side * neckRadius, platformHeight - platformThickness),
    at((side * platformLength) / 2, platformHeight - platformThickness),
    at((side * platformLength) / 2, platformHeight),
    at(side * tube, platformHeight),
    at(side * tube, inner - tube),
  ]);
}

function lampBore(sheet: Sheet, side: 1 | -1): void {
  const { lampBoreDiameter, lipDiameter, lipThickness, lipDistance, emitterDistance, pocketDiameter, emitterDiameter } = HEAD;
  const rectangle = (u0: number, u1: number, d: number): Point[] => [
    lampPoint(side, u0, -d / 2),
    lampPoint(side, u0, d / 2),
    lampPoint(side, u1, d / 2),
    lampPoint(side, u1, -d / 2),
  ];
  sheet.shape(rectangle(lipDistance, lipDistance + lipThickness, lipDiameter), '#fff', 'thin');
  sheet.shape(rectangle(lipDistance + lipThickness, emitterDistance, lampBoreDiameter), '#fff', 'thin');
  sheet.shape(rectangle(emitterDistance, OUTER_FACE + 0.2, pocketDiameter), '#fff', 'thin');
  sheet.shape(rectangle(emitterDistance + 0.6, emitterDistance + 2.2, pocketDiameter - 0.4), '#d1fae5', 'thin');
  sheet.shape(rectangle(emitterDistance, emitterDistance + 0.6, emitterDiameter), '#fde68a', 'thin');
  for (const edge of [1, -1]) {
    sheet.line(
      'light',
      lampPoint(side, emitterDistance, (edge * emitterDiameter) / 2),
      onSample(side, (edge * emitterDiameter) / 2),
    );
  }
  sheet.line('axis', lampPoint(side, 0, 0), lampPoint(side, OUTER_FACE + 6, 0));
}

function viewTube(sheet: Sheet, side: 1 | -1): void {
  const { viewTubeDiameter, viewBoreDiameter, stopHeight, stopThickness, stopDiameter, platformHeight, baffleHeights, baffleDiameter } = HEAD;
  const [tube, bore, stop] = [viewTubeDiameter / 2, viewBoreDiameter / 2, stopDiameter / 2];
  const top = platformHeight - 1.8;
  const profile = [at(side * tube, top), at(side * tube, stopHeight), at(side * stop, stopHeight), at(side * stop, stopHeight + stopThickness)];
  for (const z of baffleHeights) {
    profile.push(at(side * bore, z === baffleHeights[0] ? stopHeight + stopThickness : z - 0.1), at(side * bore, z));
    profile.push(at((side * baffleDiameter) / 2, z), at((side * baffleDiameter) / 2, z + 0.6), at(side * bore, z + 0.6));
  }
  profile.push(at(side * bore, top));
  sheet.shape(profile, '#c7c7c7', 'thin');
}

function plate(sheet: Sheet, side: 1 | -1): void {
  const { portDiameter, plateSide, plateThickness, portLand, railHeight, railWidth } = HEAD;
  const port = portDiameter / 2;
  sheet.shape([
    at(side * port, 0),
    at((side * plateSide) / 2, 0),
    at((side * plateSide) / 2, plateThickness),
    at(side * (port + plateThickness - portLand), plateThickness),
    at(side * port, portLand),
  ]);
  sheet.shape(
    [at((side * plateSide) / 2, 0), at(side * (plateSide / 2 - railWidth), 0), at(side * (plateSide / 2 - railWidth), -railHeight), at((side * plateSide) / 2, -railHeight)],
    '#94a3b8',
    'thin',
  );
}

function sensor(sheet: Sheet): void {
  const { platformHeight, sensorHeight, sensorWindow, stopDiameter, stopHeight } = HEAD;
  sheet.shape([at(-13, platformHeight), at(13, platformHeight), at(13, platformHeight + 1.6), at(-13, platformHeight + 1.6)], '#d1fae5', 'thin');
  sheet.shape([at(-1.6, sensorHeight), at(1.6, sensorHeight), at(1.6, platformHeight), at(-1.6, platformHeight)], '#334155', 'thin');
  both((side) => {
    const edge = seenAt(0).outer / 2;
    sheet.line('view', at((-side * sensorWindow) / 2, sensorHeight), at((side * stopDiameter) / 2, stopHeight), at(side * edge, 0));
  });
}

function dimensions(sheet: Sheet): void {
  const { bodyRadius, plateSide, platformHeight, stopHeight, sensorHeight, plateThickness, portDiameter, neckRadius, railHeight } = HEAD;
  const outer = OUTER_FACE * Math.SQRT2;
  sheet.upright(at(-plateSide / 2, 0), at(-20, platformHeight), 28, `${platformHeight} platform`);
  sheet.upright(at(-plateSide / 2, 0), at(-neckRadius, outer - neckRadius), 21, (outer - neckRadius).toFixed(1));
  sheet.upright(at(-plateSide / 2, 0), at(-bodyRadius, outer - bodyRadius), 35, (outer - bodyRadius).toFixed(1));
  sheet.upright(at(plateSide / 2, 0), at(0.5, sensorHeight), 232, `${sensorHeight} sensor window`, 0.14);
  sheet.upright(at(plateSide / 2, 0), at(4, stopHeight), 225, `${stopHeight} stop`, 0.25);
  sheet.upright(at(plateSide / 2, 0), at(plateSide / 2, plateThickness), 239, String(plateThickness));
  sheet.across(at(-plateSide / 2, -railHeight), at(plateSide / 2, -railHeight), 194, `plate ${plateSide} square`);
  sheet.across(at(-bodyRadius, -1), at(bodyRadius, -1), 187, `body dia ${2 * bodyRadius}`);
  sheet.across(at(-portDiameter / 2, 0), at(portDiameter / 2, 0), 180, `port ${portDiameter}`);
  sheet.across(at(-HEAD.platformLength / 2, platformHeight + 1), at(HEAD.platformLength / 2, platformHeight + 1), 42, `platform ${HEAD.platformLength} x ${HEAD.platformWidth}`);
}

function notes(sheet: Sheet): void {
  const seen = seenAt(0);
  const lit = litByOneLamp();
  const angles = lampAngles();
  const x = 244;
  const note = (words: string, y: number, to: Point): void => sheet.note(words, { x, y }, to);
  note('sensor board, face down', 52, at(12, HEAD.platformHeight + 0.8));
  note(`view tube dia ${HEAD.viewTubeDiameter} / ${HEAD.viewBoreDiameter}, ${(HEAD.platformHeight - 1.8 - HEAD.stopHeight).toFixed(1)} long`, 62, at(3.4, 43));
  note(`baffles at ${HEAD.baffleHeights.join(', ')}, hole ${HEAD.baffleDiameter}`, 69, at(2, HEAD.baffleHeights[1] + 0.3));
  note(`stop, hole ${HEAD.stopDiameter}`, 76, at(2, HEAD.stopHeight + 0.4));
  note(`lamp board, pocket ${HEAD.pocketDiameter} x ${HEAD.pocketDepth}`, 88, lampPoint(1, HEAD.emitterDistance + 1.4, -3));
  note(`lamp bore ${HEAD.lampBoreDiameter}`, 98, lampPoint(1, 24, 3));
  note(`lip, hole ${HEAD.lipDiameter} x ${HEAD.lipThickness}`, 106, lampPoint(1, HEAD.lipDistance + 0.5, 4.2));
  note(`cavity cone, ${(2 * (CAVITY_FACE * Math.SQRT2 - HEAD.plateThickness)).toFixed(1)} wide below`, 158, at(17.5, 2.4));
  note(`rail ${HEAD.railHeight} x ${HEAD.railWidth} (wet films)`, 184, at(HEAD.plateSide / 2 - 1, -HEAD.railHeight / 2));
  sheet.lines({ x: 186, y: 13 }, [
    'By similar triangles (head-geometry.ts):',
    `seen disc ${seen.outer.toFixed(1)} in all, ${seen.full.toFixed(1)} by the whole window;`,
    `steepest ray to the sensor ${seen.steepestDegrees.toFixed(1)} deg off the normal`,
    `lit by one lamp, across: ${lit.full.toFixed(1)} fully, ${lit.outer.toFixed(1)} in all`,
    `(along the lamp's direction 1.41 times that)`,
    `lamp angle over the seen disc ${angles.least.toFixed(0)} to ${angles.most.toFixed(0)} deg`,
    `lamp: emitter ${HEAD.emitterDistance}, lip ${HEAD.lipDistance} from the sample's centre`,
  ]);
  sheet.text({ x: 243, y: 116 }, 'Amber: light, wholly lit.', { colour: '#b45309' });
  sheet.text({ x: 243, y: 121 }, 'Blue: what the sensor sees.', { colour: '#1d4ed8' });
  sheet.lines({ x: 243, y: 128 }, ['Inside everywhere: matte', 'black, flocked or painted;', 'walls 2 or more; foil tape', 'outside against infrared.'], 3);
}

/** The head cut through two opposite lamps. */
export function sectionDrawing(): Sheet {
  const sheet = new Sheet('Head, section through two opposite lamps', `Scale ${SCALE}:1. 45/0: light at 45 degrees from a ring of ${HEAD.lamps}, view along the normal.`);
  sheet.line('thin', at(-40, -HEAD.railHeight), at(40, -HEAD.railHeight));
  both((side) => body(sheet, side));
  both((side) => lampBore(sheet, side));
  both((side) => viewTube(sheet, side));
  both((side) => plate(sheet, side));
  sensor(sheet);
  sheet.line('axis', at(0, -3), at(0, 50));
  dimensions(sheet);
  notes(sheet);
  return sheet;
}
