import { z } from 'zod';
import { route } from './route.ts';
import { suggestionSchema } from './fits.ts';
import { overSchema, readingSchema, takeReadingSchema } from './readings.ts';
import { colourSchema, dateSchema, findingSchema, idSchema, timeSchema } from './words.ts';

/** What a pour is made from: a tube, or a pile already made (serial dilution). */
export const partSchema = z.strictObject({
  /** Exactly one of the two is given. */
  tubeId: idSchema.nullable(),
  fromRungId: idSchema.nullable(),
  label: z.string(),
  /** What the plan asks for, g. */
  plannedGrams: z.number(),
  /** What was weighed, g; null until it was. */
  weighedGrams: z.number().nullable(),
});

export const rungSchema = z
  .strictObject({
    id: idSchema,
    /** "masstone", "1:1", "1:4", "1:16". */
    name: z.string(),
    /** Parts of white to one part of paint; 0 for the masstone. */
    whiteParts: z.number(),
    film: z.enum(['opaque', 'card']),
    /** The day it was drawn down; null where nobody said. */
    pulledOn: dateSchema.nullable(),
    parts: z.array(partSchema),
    weighed: z.boolean(),
    /** Share of this tube by mass, from the weighed grams where known, and its relative standard deviation. */
    share: z.number(),
    shareRelativeSigma: z.number(),
    readings: z.array(readingSchema),
    /** Kept readings so far and how many the rung asks for, per thing it is read over. */
    need: z.array(z.strictObject({ over: overSchema, kept: z.number().int(), wanted: z.number().int() })),
    done: z.boolean(),
    /** Mean of the kept readings, and their mean colour difference from it (ASTM E2214 MCDM, CIEDE2000). */
    mean: z.array(z.number()).nullable(),
    colour: colourSchema.nullable(),
    mcdm: z.number().nullable(),
    /** "reads like 1:3.4, not 1:4", after a fit. */
    verdict: z.string().nullable(),
    findings: z.array(findingSchema),
  })
  .meta({ id: 'Rung' });
export type Rung = z.infer<typeof rungSchema>;

export const planSchema = z.strictObject({
  method: z.enum(['straight', 'serial', 'mixed']),
  /** Smallest step of the scale, g. */
  scaleResolution: z.number(),
  smallestPour: z.number(),
  /** Paint and white used in all, g. */
  tubeGrams: z.number(),
  whiteGrams: z.number(),
  /** Worst relative standard deviation of a rung's ratio by this plan. */
  worstRelativeSigma: z.number(),
  /** Plain words on what the plan costs and what limits it. */
  sentences: z.array(z.string()),
});

/** The one next thing to do. */
export const nextStepSchema = z.strictObject({
  action: z.enum([
    'weigh',
    'draw down',
    'read',
    'card',
    'calibrate',
    'connect',
    'fit',
    'measure more',
    'done',
  ]),
  rungId: idSchema.nullable(),
  over: overSchema.nullable(),
  /** Short, for the big type: "Read the 1:4". */
  headline: z.string(),
  /** One or two sentences below it. */
  sentence: z.string(),
});

export const ladderSchema = z
  .strictObject({
    id: idSchema,
    tubeId: idSchema,
    whiteTubeId: idSchema,
    state: z.enum(['open', 'complete', 'closed']),
    startedAt: timeSchema,
    plan: planSchema,
    rungs: z.array(rungSchema),
    /** Bare cards, when films over a card are read: kept readings per side. */
    cards: z.strictObject({ black: z.array(readingSchema), white: z.array(readingSchema) }).nullable(),
    progress: z.strictObject({ done: z.number().int(), of: z.number().int() }),
    next: nextStepSchema,
    suggestions: z.array(suggestionSchema),
    /** What undo and redo would do now, in words; null when there is nothing. */
    undo: z.string().nullable(),
    redo: z.string().nullable(),
  })
  .meta({ id: 'Ladder' });
export type Ladder = z.infer<typeof ladderSchema>;

export const startLadderSchema = z.strictObject({
  tubeId: idSchema,
  /** Smallest step of the scale, g: 0.01 for a pocket scale. */
  scaleResolution: z.number().positive().max(10).default(0.01),
  /** Smallest pile worth pouring, g. */
  smallestPour: z.number().positive().max(100).default(0.5),
  /** Paint a drawdown takes, g per rung. */
  perRung: z.number().positive().max(200).default(2),
  method: z.enum(['straight', 'serial', 'least paint']).default('least paint'),
  /** Parts of white to one of paint, masstone first. */
  whiteParts: z.array(z.number().nonnegative().max(10_000)).min(1).max(12).default([0, 1, 4, 16]),
  repeats: z.number().int().min(1).max(20).default(3),
  /** Add thin masstone films over a black and white card: they give hiding and undertone. */
  cardFilms: z.boolean().default(false),
});
export type StartLadder = z.input<typeof startLadderSchema>;
/** The same with every default filled in. */
export type LadderRequest = z.infer<typeof startLadderSchema>;

/** A plan without starting anything. */
export const planAnswerSchema = z.strictObject({
  plan: planSchema,
  rungs: z.array(
    rungSchema.pick({ name: true, whiteParts: true, parts: true, share: true, shareRelativeSigma: true }),
  ),
});

/** Grams as weighed, in the order of `parts`. */
export const weighedSchema = z.strictObject({
  grams: z.array(z.number().positive().max(100_000)).min(1).max(20),
});
/** When the films were drawn down; one rung, or all of the ladder. */
export const pulledSchema = z.strictObject({ pulledOn: dateSchema, rungId: idSchema.optional() });
export const decideSchema = z.strictObject({
  keep: z.boolean(),
  /** Why the painter overrules the program. */
  reason: z.string().max(500).default(''),
});

/** A reading taken on a rung or card: what became of it, and the ladder after it. */
export const takenSchema = z.strictObject({
  /** Null when the head refused to read: nothing was stored. */
  reading: readingSchema.nullable(),
  findings: z.array(findingSchema),
  ladder: ladderSchema,
});
export type Taken = z.infer<typeof takenSchema>;

const params = z.strictObject({ ladderId: idSchema });
const rungParams = z.strictObject({ ladderId: idSchema, rungId: idSchema });
const answer = ladderSchema;

export const ladderRoutes = {
  listLadders: route({
    method: 'GET',
    path: '/api/ladders',
    summary: 'Ladders of the current palette, or of one tube',
    query: z.strictObject({ tube: idSchema.optional() }),
    answer: z.array(ladderSchema),
  }),
  planLadder: route({
    method: 'POST',
    path: '/api/ladders/plan',
    summary: 'The weighing plan a ladder would get',
    body: startLadderSchema,
    answer: planAnswerSchema,
  }),
  startLadder: route({
    method: 'POST',
    path: '/api/ladders',
    summary: "Start a tube's ladder against the palette's white",
    body: startLadderSchema,
    answer,
    status: 201,
  }),
  getLadder: route({ method: 'GET', path: '/api/ladders/:ladderId', summary: 'One ladder', params, answer }),
  weighRung: route({
    method: 'PUT',
    path: '/api/ladders/:ladderId/rungs/:rungId/weighed',
    summary: 'Grams as weighed for a rung',
    params: rungParams,
    body: weighedSchema,
    answer,
  }),
  sayPulled: route({
    method: 'PUT',
    path: '/api/ladders/:ladderId/pulled',
    summary: 'The day a rung, or the whole ladder, was drawn down; readings are that many days old',
    params,
    body: pulledSchema,
    answer,
  }),
  takeReading: route({
    method: 'POST',
    path: '/api/ladders/:ladderId/rungs/:rungId/readings',
    summary: 'Read a rung with the head, or hand in a reading typed or from a file',
    params: rungParams,
    body: takeReadingSchema,
    answer: takenSchema,
    status: 201,
  }),
  takeCardReading: route({
    method: 'POST',
    path: '/api/ladders/:ladderId/cards/:side/readings',
    summary: 'Read the bare card beside the films',
    params: z.strictObject({ ladderId: idSchema, side: z.enum(['black', 'white']) }),
    body: takeReadingSchema,
    answer: takenSchema,
    status: 201,
  }),
  getLadderAdvice: route({
    method: 'GET',
    path: '/api/ladders/:ladderId/advice',
    summary: 'What the next measurement would buy, from the rungs read so far; empty before there is enough',
    params,
    answer: z.array(suggestionSchema),
  }),
  decideReading: route({
    method: 'PUT',
    path: '/api/ladders/:ladderId/readings/:readingId/keep',
    summary: 'Keep a reading or send it back, with a reason',
    params: z.strictObject({ ladderId: idSchema, readingId: idSchema }),
    body: decideSchema,
    answer,
  }),
  undo: route({
    method: 'POST',
    path: '/api/ladders/:ladderId/undo',
    summary: 'Undo the last thing done on this ladder; nothing read is lost',
    params,
    answer,
  }),
  redo: route({
    method: 'POST',
    path: '/api/ladders/:ladderId/redo',
    summary: 'Do the last undone thing again',
    params,
    answer,
  }),
  closeLadder: route({
    method: 'POST',
    path: '/api/ladders/:ladderId/close',
    summary: 'Put a ladder aside: its readings stay, a fit leaves them out',
    params,
    answer,
  }),
};
