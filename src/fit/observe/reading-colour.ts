import { DEFAULT_WHITE } from '../../colour/illuminant.ts';
import { type Lab, labOfReflectance } from '../../colour/lab.ts';
import { tristimulusWeights } from '../../colour/tristimulus.ts';
import { gridEstimator } from './grid-estimate.ts';

/**
 * The colour of a reading, D65/10deg, seen from a prediction of it: the predicted spectrum plus the smoothest spectrum
 * that reads as the difference of the two readings. With 10 nm readings that is the reading's own colour; with bands
 * or XYZ it takes from the prediction only what the reading cannot see, so that a reading equal to its prediction has
 * exactly the predicted colour.
 */
export function readingColour(rows: readonly Float64Array[]): (
  reading: ArrayLike<number>,
  predicted: {
    readonly reflectance: ArrayLike<number>;
    readonly reading: ArrayLike<number>;
  },
) => Lab {
  const toGrid = gridEstimator(rows);
  const weights = tristimulusWeights(DEFAULT_WHITE);
  return (reading, predicted) => {
    const difference = toGrid(
      Float64Array.from({ length: reading.length }, (_, c) => reading[c]! - predicted.reading[c]!),
    );
    return labOfReflectance(
      difference.map((d, i) => d + predicted.reflectance[i]!),
      weights,
    );
  };
}
