/**
 * Every dimension of the printed head, mm. z is the height above the sample, r the distance from the axis. All are
 * DESIGN ESTIMATES: no head of this drawing was built or measured. The derived sizes follow by similar triangles.
 */
export const HEAD = {
  /** Where the lamps look: 45 degrees, from this far along their axes. */
  lamps: 6,
  emitterDistance: 30,
  emitterDiameter: 2,
  lipDistance: 14,
  lipDiameter: 7,
  lipThickness: 1,
  lampBoreDiameter: 8,
  pocketDiameter: 10.2,
  pocketDepth: 3,
  /** The view. */
  sensorHeight: 45,
  sensorWindow: 1,
  stopHeight: 22,
  stopDiameter: 2.6,
  stopThickness: 0.8,
  viewBoreDiameter: 5,
  viewTubeDiameter: 8,
  baffleDiameter: 3.6,
  baffleHeights: [28, 34, 40],
  /** The plate with the port. */
  portDiameter: 12,
  plateThickness: 1.5,
  plateSide: 70,
  portLand: 0.4,
  /** The body. */
  bodyRadius: 30,
  neckRadius: 11,
  platformHeight: 46,
  platformThickness: 4,
  platformLength: 40,
  platformWidth: 30,
  screwCircle: 50,
  /** Rails for wet films. */
  railHeight: 0.5,
  railWidth: 8,
} as const;

export interface Seen {
  /** Diameter within which the sensor sees anything at all. */
  readonly outer: number;
  /** Diameter that all of its window sees. */
  readonly full: number;
  /** Steepest ray to the sensor, degrees from the normal. */
  readonly steepestDegrees: number;
}

/** What the sensor sees of a plane at height z through the stop. */
export function seenAt(z: number): Seen {
  const { sensorHeight, sensorWindow, stopHeight, stopDiameter } = HEAD;
  const behind = sensorHeight - stopHeight;
  const ahead = stopHeight - z;
  const stop = stopDiameter / 2;
  const window = sensorWindow / 2;
  const steepest = (stop + window) / behind;
  return {
    outer: 2 * (stop + steepest * ahead),
    full: 2 * (stop + ((stop - window) / behind) * ahead),
    steepestDegrees: (Math.atan(steepest) * 180) / Math.PI,
  };
}

export interface Lit {
  /** Across the lamp's direction, mm: where the whole emitter shines, and where anything of it does. */
  readonly full: number;
  readonly outer: number;
}

/** One lamp's spot at the sample, across its direction; along it everything is 1.41 times longer. */
export function litByOneLamp(): Lit {
  const { emitterDistance, emitterDiameter, lipDistance, lipDiameter } = HEAD;
  const behind = emitterDistance - lipDistance;
  const lip = lipDiameter / 2;
  const emitter = emitterDiameter / 2;
  return {
    full: 2 * (lip + ((lip - emitter) / behind) * lipDistance),
    outer: 2 * (lip + ((lip + emitter) / behind) * lipDistance),
  };
}

/** Lamp angles at the seen disc, degrees from the normal: nearest edge to farthest. */
export function lampAngles(): { readonly least: number; readonly most: number } {
  const r = HEAD.emitterDistance * Math.SQRT1_2;
  const edge = seenAt(0).outer / 2;
  const degrees = (dx: number): number => (Math.atan2(dx, r) * 180) / Math.PI;
  return { least: degrees(r - edge), most: degrees(r + edge) };
}

/** The lamp's axis: a point at this distance from the sample's centre. */
export function onLampAxis(distance: number): { readonly r: number; readonly z: number } {
  return { r: distance * Math.SQRT1_2, z: distance * Math.SQRT1_2 };
}

/** Distance along the lamp axes at which the 45-degree faces lie: of the cavity, and of the outside. */
export const CAVITY_FACE = HEAD.lipDistance;
export const OUTER_FACE = HEAD.emitterDistance + HEAD.pocketDepth;
