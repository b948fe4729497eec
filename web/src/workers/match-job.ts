import type { MixingPalette } from '../../../src/fit/palette.ts';
import { type MatchOptions, type MatchResult, type Wanted, matchColour } from '../../../src/mix/index.ts';

export interface MatchAsk {
  readonly wanted: Wanted;
  readonly options: Omit<MatchOptions, 'watch'>;
}
export type MatchAnswer = MatchResult;

export function matchJob(
  palette: MixingPalette,
  { wanted, options }: MatchAsk,
  progress: (share: number) => void,
): MatchAnswer {
  return matchColour(palette, wanted, {
    ...options,
    watch: { onProgress: (done, of) => progress(done / of) },
  });
}
