import type { SwatchSet } from '../../calibrate/swatch-set/schema.ts';
import type { PaletteFit } from '../palette-fit.ts';
import type { Advice } from './advice.ts';
import { adviseTube } from './advise-tube.ts';

/** Under this fall of the mean radius, CIEDE2000, a measurement is not worth the paint. This project's choice. */
const WORTH = 0.01;

/** The best of what could be measured next, one of a kind (one check mixture, one tint), at most `count`. */
export function nextMeasurements(fit: PaletteFit, set: SwatchSet, id: string, count: number): Advice[] {
  const advice = adviseTube(fit, set, id).filter(({ gain }) => gain >= WORTH);
  const best = advice.filter(
    ({ measurement: { kind } }, i) => advice.findIndex((a) => a.measurement.kind === kind) === i,
  );
  return best.slice(0, count);
}
