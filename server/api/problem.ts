import { z } from 'zod';

/** An error as RFC 9457 has it: `detail` is one sentence saying what was seen, what is allowed and what to do next. */
export const problemSchema = z
  .looseObject({
    /** `about:blank`, or `/problems/NAME` for a kind a program may want to tell apart. */
    type: z.string(),
    title: z.string(),
    status: z.number().int(),
    detail: z.string(),
    /** Which sentence `detail` is, for saying it in another language; it stays when the English is said better. */
    code: z.string().optional(),
    /** What the sentence says of this case, by name. */
    values: z.record(z.string(), z.string()).optional(),
    /** Where in the body, `masses.blue` style, when the body was refused. */
    at: z.string().optional(),
    /** Everything that was refused in the body, when there was more than one thing. */
    issues: z.array(z.strictObject({ at: z.string(), sentence: z.string() })).optional(),
  })
  .meta({ id: 'Problem', title: 'Problem', description: 'An error as RFC 9457 has it.' });
export type Problem = z.infer<typeof problemSchema>;

export const PROBLEM_MEDIA_TYPE = 'application/problem+json';
