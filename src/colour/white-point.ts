import type { WhiteName } from './illuminant.ts';
import { WHITE_POINTS } from './tables/white-points.ts';
import type { Xyz } from './xyz.ts';

/** The perfect diffuser, R = 1 everywhere, under one white; Y is 100. */
export function whitePoint<W extends WhiteName>(white: W): Xyz<W> {
  const [X, Y, Z] = WHITE_POINTS[white];
  return { X, Y, Z, white };
}
