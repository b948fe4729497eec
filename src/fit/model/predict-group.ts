import { GRID_SIZE } from '../../colour/grid.ts';
import { type ModelState, type PileMixture, type SwatchSlopes, mixtureOf, predictSwatch } from './forward.ts';
import type { FitProblem, Group } from './problem.ts';
import { reportedMean } from './reported.ts';

const N = GRID_SIZE;

/** Readings of a group as predicted, its residuals, and how each channel answers the grid. */
export interface GroupPrediction {
  readonly mixture: PileMixture;
  readonly slopes: readonly SwatchSlopes[];
  /** Predicted readings, swatch after swatch. */
  readonly predicted: Float64Array;
  readonly residual: Float64Array;
  /** Slope of the reported by the true reading: 1 but near a zero that clips. */
  readonly reported: Float64Array;
}

/** `room` is a prediction of the same group that is done with: taking its place is quicker than new memory. */
export function predictGroup(
  problem: FitProblem,
  state: ModelState,
  group: Group,
  room?: GroupPrediction,
): GroupPrediction {
  const mixture = mixtureOf(problem, state, group, room?.mixture);
  const { A, channels, channelAt, clipped, noise } = problem;
  const count = group.swatches.length * channels;
  const predicted = room?.predicted ?? new Float64Array(count);
  const residual = room?.residual ?? new Float64Array(count);
  const reported = room?.reported ?? new Float64Array(count).fill(1);
  const slopes: SwatchSlopes[] = [];
  for (let s = 0; s < group.swatches.length; s++) {
    const observed = group.swatches[s]!;
    const at = predictSwatch(state, mixture, observed.film, observed.card, room?.slopes[s]);
    slopes.push(at);
    for (let c = 0; c < channels; c++) {
      let v = 0;
      if (channelAt) v = at.measured[channelAt[c]!]!;
      else for (let i = 0; i < N; i++) v += A[c * N + i]! * at.measured[i]!;
      const k = s * channels + c;
      if (clipped) {
        const r = reportedMean(v, noise.sigma);
        v = r.value;
        reported[k] = r.slope;
      }
      predicted[k] = v;
      residual[k] = observed.mean[c]! - v;
    }
  }
  return { mixture, slopes, predicted, residual, reported };
}
