import type { Spectrum } from '../../colour/grid.ts';
import { gridEstimator } from './grid-estimate.ts';

/** Bare cards on the grid: the smoothest spectrum that reads as given, held within what was read. */
export function cardEstimator(rows: readonly Float64Array[]): (reading: readonly number[]) => Spectrum {
  const toGrid = gridEstimator(rows);
  return (reading) => {
    const low = Math.min(...reading);
    const high = Math.max(...reading);
    return toGrid(reading).map((v) => Math.min(high, Math.max(low, v)));
  };
}
