import { DEFAULT_WHITE, type WhiteName } from '../../colour/illuminant.ts';
import type { MixingPalette } from '../../fit/palette.ts';
import type { Masses } from '../film-stack.ts';
import { searchOn } from '../search/come-down.ts';
import { lean } from '../../colour/lean.ts';
import { type MixPrediction, predictMix } from '../predict-mix.ts';
import { type Pour, pourRecipe } from '../pour/pour-recipe.ts';
import type { Scale } from '../pour/scale.ts';
import { MixProblem } from '../problem.ts';
import { tubeIndex, tubeSet } from '../tube-set.ts';
import { say } from '../sentences.ts';

/** A near-white touched with a warm. */
export interface Highlight {
  readonly warm: string;
  readonly masses: Masses;
  readonly prediction: MixPrediction;
  /** As the scale can weigh it; where a scale was given. */
  readonly pour?: Pour;
  /** Munsell value given up against the white alone. */
  readonly valueLost: number;
}

const HALVINGS = 60;

/**
 * Highlights: the palette's white with just enough of one warm tube to lean `warmth` (CIELAB units) warmer than the
 * white alone, the one that gives up least value first. Tubes that do not warm the white are left out.
 * @throws MixProblem when warmth is not above 0 or no tube of the palette can warm the white that far.
 */
export function highlights(
  palette: MixingPalette,
  options: {
    readonly warmth?: number;
    readonly grams?: number;
    readonly scale?: Scale;
    readonly white?: WhiteName;
    readonly only?: readonly string[];
  } = {},
): Highlight[] {
  const { warmth = 3, grams = 10, white = DEFAULT_WHITE } = options;
  if (!(warmth > 0 && Number.isFinite(warmth))) {
    throw new MixProblem(say('highlight-warmth', { warmth }));
  }
  const set = tubeSet(palette, {
    white,
    ...(options.only ? { only: [...new Set([...options.only, palette.white])] } : {}),
  });
  const { kernel } = searchOn(set);
  const base = tubeIndex(set, palette.white);
  const plain = predictMix(palette, { [palette.white]: 1 }, white);
  const found = set.ids.flatMap((id, t): Highlight[] => {
    if (t === base) return [];
    kernel.choose([t, base]);
    const warmer = (share: number): number => {
      kernel.colour(Float64Array.of(share, 1 - share));
      return lean({ a: kernel.u[1]!, b: kernel.u[2]! }) - plain.lean;
    };
    // The first share, from none up, that is warm enough.
    const top = Array.from({ length: 60 }, (_, k) => 1e-5 * 1.2 ** k).find(
      (share) => share < 1 && warmer(share) >= warmth,
    );
    if (top === undefined) return [];
    let low = top / 1.2;
    let high = top;
    if (warmer(low) >= warmth) low = 0;
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (low + high) / 2;
      if (warmer(middle) >= warmth) high = middle;
      else low = middle;
    }
    const part = high / set.strength[t]!;
    const rest = (1 - high) / set.strength[base]!;
    const masses = {
      [id]: (grams * part) / (part + rest),
      [palette.white]: (grams * rest) / (part + rest),
    };
    const prediction = predictMix(palette, masses, white);
    const pour =
      options.scale &&
      pourRecipe(palette, { spectrum: prediction.reflectance }, masses, {
        grams,
        scale: options.scale,
        white,
      });
    const valueLost = plain.value - prediction.value;
    return [{ warm: id, masses, prediction, ...(pour ? { pour } : {}), valueLost }];
  });
  if (found.length === 0) {
    throw new MixProblem(say('no-highlight', { warmth }));
  }
  return found.toSorted((a, b) => a.valueLost - b.valueLost || (a.warm < b.warm ? -1 : 1));
}
