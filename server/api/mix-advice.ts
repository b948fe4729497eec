import { z } from 'zod';
import { NUDGES } from '../../src/mix/lean-and-mud/nudge.ts';
import {
  choice,
  edgeMixSchema,
  from,
  gramsSchema,
  pourSchema,
  predictionSchema,
  prioritySchema,
  scaleSchema,
  splitSchema,
  underLightSchema,
  wantedSchema,
} from './mix-words.ts';
import { route } from './route.ts';
import { idSchema, massesSchema } from './words.ts';

/** What lies under a film: a sealed card, a toned ground as the profile's geometry reads it, or dried paint. */
export const groundSchema = z.union([
  z.enum(['white card', 'black card']),
  z.strictObject({ reflectance: z.array(z.number()).length(36) }),
  z.strictObject({ paint: massesSchema }),
]);
const thicknessSchema = z.number().nonnegative().max(1e6);

export const filmsRequestSchema = z.strictObject({
  ...from,
  masses: massesSchema,
  ground: groundSchema.default('white card'),
  /** From undertone to impasto, one film each. */
  thicknesses: z.array(thicknessSchema).min(1).max(40),
  /** Micrometres need a profile that has seen one film of known thickness. */
  unit: z.enum(['white scattering', 'micrometres']).default('white scattering'),
  /** Dried over the film, bottom first, in the same unit. */
  glazes: z
    .array(z.strictObject({ masses: massesSchema, thickness: thicknessSchema }))
    .max(10)
    .default([]),
});
export const filmsAnswerSchema = z.strictObject({
  films: z.array(
    z.strictObject({
      thickness: z.number(),
      prediction: predictionSchema,
      /** Y over the black of a sealed card divided by Y over its white, of the film without glazes; 0.98 hides. */
      contrast: z.number(),
      lights: z.array(underLightSchema),
    }),
  ),
  /** The mix thick enough to hide, without glazes. */
  opaque: predictionSchema,
});

export const nudgesRequestSchema = z.strictObject({
  ...from,
  only: choice.only,
  masses: massesSchema,
  nudges: z
    .array(z.enum(NUDGES))
    .min(1)
    .max(NUDGES.length)
    .default([...NUDGES]),
});
export const nudgesAnswerSchema = z.strictObject({
  /** A nudge no addition can make is left out. */
  nudges: z.array(
    z.strictObject({
      nudge: z.enum(NUDGES),
      add: massesSchema,
      grams: z.number(),
      /** CIEDE2000 the mix moves, and what becomes of value, lean and chroma. */
      moved: z.number(),
      value: z.number(),
      lean: z.number(),
      chroma: z.number(),
    }),
  ),
});

export const betweenRequestSchema = z.strictObject({
  ...from,
  one: idSchema,
  two: idSchema,
  points: z.number().int().min(3).max(201).default(21),
});
const wayPointSchema = edgeMixSchema.extend({ share: z.number() });
export const betweenAnswerSchema = z.strictObject({
  /** Evenly spaced in what the tubes do; `share` is the first tube's, by mass. */
  points: z.array(wayPointSchema),
  dullest: wayPointSchema,
  /** Chroma at the dullest over that of the duller end: 1 keeps all, 0 is grey. */
  kept: z.number(),
  sentence: z.string(),
});

export const wholePartsRequestSchema = z.strictObject({
  ...from,
  target: wantedSchema,
  /** The recipe whose tubes are counted out. */
  masses: massesSchema,
  mostParts: z.number().int().min(1).max(60).default(20),
  /** Volume needs the density of every tube. */
  basis: z.enum(['mass', 'volume']).default('mass'),
  priority: prioritySchema.default('evenly'),
});
export const wholePartsAnswerSchema = z.strictObject({
  /** Fewest parts first; each longer one nearer. */
  recipes: z.array(
    z.strictObject({
      parts: massesSchema,
      total: z.number().int(),
      basis: z.enum(['mass', 'volume']),
      deltaE00: z.number(),
    }),
  ),
});

export const highlightsRequestSchema = z.strictObject({
  ...from,
  only: choice.only,
  /** How much warmer than the white alone, CIELAB units. */
  warmth: z.number().positive().max(60).default(3),
  grams: gramsSchema.default(10),
  scale: scaleSchema.optional(),
});
export const highlightsAnswerSchema = z.strictObject({
  /** Least value lost first. */
  highlights: z.array(
    z.strictObject({
      warm: idSchema,
      masses: massesSchema,
      prediction: predictionSchema,
      valueLost: z.number(),
      pour: pourSchema.nullable(),
    }),
  ),
});

export const oneMoreRequestSchema = z.strictObject({ ...from, chosen: z.array(idSchema).min(1).max(200) });
export const oneMoreAnswerSchema = z.strictObject({
  /** CIELAB units cubed reached by the chosen tubes. */
  without: z.number(),
  /** Most first; `gain` is the share added, null where nothing was reached before. */
  gains: z.array(z.strictObject({ tube: idSchema, volume: z.number(), gain: z.number().nullable() })),
});

export const reachRequestSchema = z.strictObject({
  ...from,
  ...choice,
  target: wantedSchema,
  /** Nearer than this counts as inside, CIEDE2000. */
  within: z.number().positive().max(20).default(0.1),
});
export const reachAnswerSchema = z.strictObject({
  inside: z.boolean(),
  deltaE00: z.number(),
  split: splitSchema,
  /** The nearest mix, of any number of tubes. */
  shares: massesSchema,
});

const post = { method: 'POST' } as const;
export const mixAdviceRoutes = {
  films: route({
    ...post,
    path: '/api/films',
    summary: 'A mix as films over a ground, from undertone to impasto, with glazes on top',
    body: filmsRequestSchema,
    answer: filmsAnswerSchema,
  }),
  nudges: route({
    ...post,
    path: '/api/nudges',
    summary: 'The least paint that moves a mix one just-visible step',
    body: nudgesRequestSchema,
    answer: nudgesAnswerSchema,
  }),
  betweenTwo: route({
    ...post,
    path: '/api/between',
    summary: 'What becomes of chroma between two tubes',
    body: betweenRequestSchema,
    answer: betweenAnswerSchema,
  }),
  wholeParts: route({
    ...post,
    path: '/api/whole-parts',
    summary: 'A recipe in small whole parts',
    body: wholePartsRequestSchema,
    answer: wholePartsAnswerSchema,
  }),
  highlights: route({
    ...post,
    path: '/api/highlights',
    summary: 'The white touched with each warm tube',
    body: highlightsRequestSchema,
    answer: highlightsAnswerSchema,
  }),
  oneMoreTube: route({
    ...post,
    path: '/api/one-more-tube',
    summary: 'Which other tube of the profile adds most to a choice of tubes',
    body: oneMoreRequestSchema,
    answer: oneMoreAnswerSchema,
  }),
  reach: route({
    ...post,
    path: '/api/reach',
    summary: 'Whether a colour can be mixed, by mixing it',
    body: reachRequestSchema,
    answer: reachAnswerSchema,
  }),
};
