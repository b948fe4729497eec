/** A colour as a place: a* to the right, b* away from the eye, L* up, seen without perspective. */
export interface Turn {
  /** Around the upright axis, degrees. */
  readonly around: number;
  /** Above the horizon, degrees, -90..90: 90 looks down on the a* b* plane. */
  readonly above: number;
}

export interface Seen {
  /** Right and up of the centre, CIELAB units. */
  readonly x: number;
  readonly y: number;
  /** Toward the eye, CIELAB units: larger is nearer. */
  readonly depth: number;
}

const RAD = Math.PI / 180;

/** Orthographic projection of CIELAB about the mid grey (50, 0, 0). Distances in the picture plane stay CIELAB units. */
export function see(lab: { readonly L: number; readonly a: number; readonly b: number }, turn: Turn): Seen {
  const c = Math.cos(turn.around * RAD);
  const s = Math.sin(turn.around * RAD);
  const right = lab.a * c - lab.b * s;
  const away = lab.a * s + lab.b * c;
  const up = lab.L - 50;
  const cu = Math.cos(turn.above * RAD);
  const su = Math.sin(turn.above * RAD);
  return { x: right, y: up * cu + away * su, depth: up * su - away * cu };
}

/** The same turn with angles brought into range: around 0..360, above -90..90. */
export function turned(turn: Turn, around: number, above: number): Turn {
  return {
    around: (((turn.around + around) % 360) + 360) % 360,
    above: Math.min(90, Math.max(-90, turn.above + above)),
  };
}
