import { displayColour } from '../../../src/colour/display.ts';
import { DEFAULT_WHITE } from '../../../src/colour/illuminant.ts';
import type { MixingPalette } from '../../../src/fit/palette.ts';
import {
  type PaletteLimits,
  type TubeGain,
  type ValueString,
  type ValueStringOptions,
  mixFaces,
  oneMoreTube,
  paletteLimits,
  valueString,
} from '../../../src/mix/index.ts';
import { cornersJoined, seenFromOutside } from '../charts/seen-from-outside.ts';
import type { SolidBody } from '../charts/solid-body.ts';

export interface LimitsAsk {
  readonly only: readonly string[];
}
export interface LimitsAnswer {
  readonly limits: PaletteLimits;
  /** What is seen of the reachable colours from outside, for the turntable. */
  readonly body: SolidBody;
}

type Progress = (share: number) => void;

/** Half steps of value: the body narrows fast toward its dark end. */
const VALUES = Array.from({ length: 20 }, (_, i) => (i + 1) / 2);

export function limitsJob(palette: MixingPalette, { only }: LimitsAsk, progress: Progress): LimitsAnswer {
  const limits = paletteLimits(palette, {
    only,
    values: VALUES,
    watch: { onProgress: (done, of) => progress(done / of) },
  });
  return { limits, body: bodyOf(palette, only) };
}

export interface OneMoreAsk {
  readonly chosen: readonly string[];
}
export interface OneMoreAnswer {
  readonly without: number;
  readonly gains: readonly TubeGain[];
}
export function oneMoreJob(
  palette: MixingPalette,
  { chosen }: OneMoreAsk,
  progress: Progress,
): OneMoreAnswer {
  return oneMoreTube(palette, chosen, { watch: { onProgress: (done, of) => progress(done / of) } });
}

export interface ValueStringAsk {
  readonly options: Omit<ValueStringOptions, 'watch'>;
}
export type ValueStringAnswer = ValueString;
export function valueStringJob(
  palette: MixingPalette,
  { options }: ValueStringAsk,
  progress: Progress,
): ValueStringAnswer {
  return valueString(palette, { ...options, watch: { onProgress: (done, of) => progress(done / of) } });
}

/** Largest facets of the body, CIELAB units: the more tubes, the more of it lies inside and is only looked through. */
const SIZES = [
  { upTo: 5, size: 5, joined: 0 },
  { upTo: 12, size: 7, joined: 5 },
  { upTo: Infinity, size: 12, joined: 7 },
];

function bodyOf(palette: MixingPalette, only: readonly string[]): SolidBody {
  const { size, joined } = SIZES.find(({ upTo }) => only.length <= upTo)!;
  const sheets = mixFaces(palette, { only, size });
  const facets = seenFromOutside(joined > 0 ? cornersJoined(sheets, joined) : sheets);
  const paint = Array.from({ length: facets.length / 9 }, (_, f) => {
    const mean = (c: number): number =>
      (facets[9 * f + c]! + facets[9 * f + 3 + c]! + facets[9 * f + 6 + c]!) / 3;
    return displayColour({ L: mean(0), a: mean(1), b: mean(2), white: DEFAULT_WHITE }).srgb;
  });
  return { facets, paint };
}
