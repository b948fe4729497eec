import type { z } from 'zod';
import type { WhiteName } from '../../src/colour/illuminant.ts';
import { sealedCard } from '../../src/fit/film-facts/card.ts';
import type { MixingPalette } from '../../src/fit/palette.ts';
import type { Ground } from '../../src/mix/film-stack.ts';
import { filmThickness } from '../../src/mix/film-thickness.ts';
import { betweenTwo } from '../../src/mix/lean-and-mud/between-two.ts';
import { nudges } from '../../src/mix/lean-and-mud/nudge.ts';
import type { EdgeMix } from '../../src/mix/limits/edge-search.ts';
import { reachOf } from '../../src/mix/limits/inside.ts';
import { oneMoreTube } from '../../src/mix/limits/palette-limits.ts';
import { wholeParts } from '../../src/mix/pour/whole-parts.ts';
import { contrastRatio, predictFilms, predictMix } from '../../src/mix/predict-mix.ts';
import { highlights } from '../../src/mix/value-string/highlight.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import type {
  betweenAnswerSchema,
  betweenRequestSchema,
  filmsAnswerSchema,
  filmsRequestSchema,
  groundSchema,
  highlightsAnswerSchema,
  highlightsRequestSchema,
  nudgesAnswerSchema,
  nudgesRequestSchema,
  oneMoreAnswerSchema,
  oneMoreRequestSchema,
  reachAnswerSchema,
  reachRequestSchema,
  wholePartsAnswerSchema,
  wholePartsRequestSchema,
} from '../api/mix-advice.ts';
import { defined } from '../defined.ts';
import { lightsOf, pourView, predictionView, scaleOf, wantedOf, whiteNameOf } from './views.ts';

/** What is asked beside recipes: films, nudges, mud, whole parts, highlights, reach. */
export type AdviceJob =
  | { readonly kind: 'films'; readonly request: z.infer<typeof filmsRequestSchema> }
  | { readonly kind: 'nudges'; readonly request: z.infer<typeof nudgesRequestSchema> }
  | { readonly kind: 'between'; readonly request: z.infer<typeof betweenRequestSchema> }
  | { readonly kind: 'whole parts'; readonly request: z.infer<typeof wholePartsRequestSchema> }
  | { readonly kind: 'highlights'; readonly request: z.infer<typeof highlightsRequestSchema> }
  | { readonly kind: 'one more'; readonly request: z.infer<typeof oneMoreRequestSchema> }
  | { readonly kind: 'reach'; readonly request: z.infer<typeof reachRequestSchema> };

export interface AdviceAnswers {
  readonly films: z.infer<typeof filmsAnswerSchema>;
  readonly nudges: z.infer<typeof nudgesAnswerSchema>;
  readonly between: z.infer<typeof betweenAnswerSchema>;
  readonly 'whole parts': z.infer<typeof wholePartsAnswerSchema>;
  readonly highlights: z.infer<typeof highlightsAnswerSchema>;
  readonly 'one more': z.infer<typeof oneMoreAnswerSchema>;
  readonly reach: z.infer<typeof reachAnswerSchema>;
}

/** An extreme mix as answers state it. */
export const edgeMixView = ({ shares, lab, value, lean, chroma }: EdgeMix) => ({
  shares: { ...shares },
  Lab: { L: lab.L, a: lab.a, b: lab.b },
  value,
  lean,
  chroma,
});

/** Runs one of them. @throws MixProblem, RangeError */
export function runAdvice(profile: PaletteProfile, job: AdviceJob): AdviceAnswers[AdviceJob['kind']] {
  const palette = paletteOf(profile);
  const white = whiteNameOf(job.request.white);
  switch (job.kind) {
    case 'films':
      return films(profile, palette, white, job.request);
    case 'nudges': {
      const { masses, only } = job.request;
      const found = nudges(palette, masses, { white, nudges: job.request.nudges, ...defined({ only }) });
      return { nudges: found.map((n) => ({ ...n, add: { ...n.add } })) };
    }
    case 'between': {
      const { one, two, points } = job.request;
      const found = betweenTwo(palette, one, two, { points, white });
      return {
        points: found.points.map((p) => ({ ...edgeMixView(p), share: p.share })),
        dullest: { ...edgeMixView(found.dullest), share: found.dullest.share },
        kept: found.kept,
        sentence: found.sentence,
      };
    }
    case 'whole parts': {
      const { target, masses, mostParts, basis, priority } = job.request;
      const densities = Object.fromEntries(
        profile.tubes.flatMap((t) => (t.density === undefined ? [] : [[t.id, t.density]])),
      );
      const options = { mostParts, basis, priority, densities, white };
      const found = wholeParts(palette, wantedOf(target, white), masses, options);
      return { recipes: found.map((r) => ({ ...r, parts: { ...r.parts } })) };
    }
    case 'highlights': {
      const { warmth, grams, only, scale } = job.request;
      const options = { warmth, grams, white, ...defined({ only }), ...scaleOf(scale) };
      return {
        highlights: highlights(palette, options).map((h) => ({
          warm: h.warm,
          masses: { ...h.masses },
          prediction: predictionView(h.prediction),
          valueLost: h.valueLost,
          pour: h.pour ? pourView(h.pour) : null,
        })),
      };
    }
    case 'one more': {
      const { without, gains } = oneMoreTube(palette, job.request.chosen, { white });
      return {
        without,
        gains: gains.map((g) => ({ ...g, gain: Number.isFinite(g.gain) ? g.gain : null })),
      };
    }
    case 'reach': {
      const { target, within, only, without } = job.request;
      const found = reachOf(palette, wantedOf(target, white), {
        white,
        within,
        ...defined({ only, without }),
      });
      const { inside, deltaE00, split, shares } = found;
      return { inside, deltaE00, split: { ...split }, shares: { ...shares } };
    }
  }
}

function groundOf(palette: MixingPalette, ground: z.infer<typeof groundSchema>): Ground {
  if (typeof ground === 'object') return ground;
  const card = sealedCard(palette.surface);
  return { reflectance: ground === 'white card' ? card.white : card.black };
}

function films(
  profile: PaletteProfile,
  palette: MixingPalette,
  white: WhiteName,
  request: z.infer<typeof filmsRequestSchema>,
): AdviceAnswers['films'] {
  const { masses, thicknesses, unit, glazes } = request;
  const ground = groundOf(palette, request.ground);
  const thick = (thickness: number): { X: number; sdLnX?: number } =>
    unit === 'micrometres'
      ? filmThickness(thickness, profile.whiteScatteringPerMicrometre)
      : { X: thickness };
  const over = glazes.map((glaze) => ({ masses: glaze.masses, ...thick(glaze.thickness) }));
  return {
    films: thicknesses.map((thickness) => {
      const film = { masses, ...thick(thickness) };
      const prediction = predictFilms(palette, { ground, films: [film, ...over] }, white);
      return {
        thickness,
        prediction: predictionView(prediction),
        contrast: contrastRatio(palette, film, sealedCard(palette.surface), white),
        lights: lightsOf(prediction.reflectance, white),
      };
    }),
    opaque: predictionView(predictMix(palette, masses, white)),
  };
}
