import { displayColour } from '../../../src/colour/display.ts';
import { DEFAULT_WHITE } from '../../../src/colour/illuminant.ts';
import { labF } from '../../../src/colour/lab.ts';
import { luminanceOfValue } from '../../../src/colour/munsell-value.ts';
import type { MixingPalette } from '../../../src/fit/palette.ts';
import {
  type PaletteLimits,
  type TubeGain,
  type ValueSlice,
  type ValueString,
  type ValueStringOptions,
  oneMoreTube,
  paletteLimits,
  valueString,
} from '../../../src/mix/index.ts';

export interface LimitsAsk {
  readonly only: readonly string[];
}
export interface LimitsAnswer {
  readonly limits: PaletteLimits;
  /** A shell of reachable colour for the turntable: L*, a*, b* one after another, and a CSS colour each. */
  readonly shell: { readonly lab: Float32Array; readonly paint: readonly string[] };
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
  return { limits, shell: shellOf(limits) };
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

/** Steps drawn between two solved slices, and between two solved hues: straight lines between solved edges. */
const BETWEEN_VALUES = 3;
const BETWEEN_HUES = 3;

function shellOf({ slices, darkest, lightest }: PaletteLimits): LimitsAnswer['shell'] {
  const hues = slices[0]?.edge.map((e) => e.hue) ?? [];
  const end = (value: number): ValueSlice => ({
    value,
    area: 0,
    edge: hues.map((hue) => ({ hue, chroma: 0 })),
  });
  const levels = [end(darkest.value), ...slices, end(lightest.value)];
  const lab: number[] = [];
  const paint: string[] = [];
  const put = (value: number, hue: number, chroma: number): void => {
    const h = (hue * Math.PI) / 180;
    const at = {
      L: 116 * labF(luminanceOfValue(value) / 100) - 16,
      a: chroma * Math.cos(h),
      b: chroma * Math.sin(h),
    };
    lab.push(at.L, at.a, at.b);
    paint.push(displayColour({ ...at, white: DEFAULT_WHITE }).srgb);
  };
  for (let level = 0; level + 1 < levels.length; level++) {
    const [low, high] = [levels[level]!, levels[level + 1]!];
    for (let v = 0; v < BETWEEN_VALUES; v++) {
      const t = v / BETWEEN_VALUES;
      hues.forEach((hue, k) => {
        const next = (k + 1) % hues.length;
        const chroma = (i: number): number => low.edge[i]!.chroma * (1 - t) + high.edge[i]!.chroma * t;
        for (let s = 0; s < BETWEEN_HUES; s++) {
          const w = s / BETWEEN_HUES;
          put(
            low.value * (1 - t) + high.value * t,
            hue + (w * 360) / hues.length,
            chroma(k) * (1 - w) + chroma(next) * w,
          );
        }
      });
    }
  }
  return { lab: Float32Array.from(lab), paint };
}
