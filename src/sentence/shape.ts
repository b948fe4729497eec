/** From what a schema finds wrong to a clause for a person: what is wanted at that place. */
import { say } from './shape-sentences.ts';

/** What a schema library says of one place; the members that are read here. */
export interface ShapeIssue {
  readonly code?: string | undefined;
  readonly message: string;
  readonly expected?: string | undefined;
  readonly origin?: string | undefined;
  readonly minimum?: number | bigint | undefined;
  readonly maximum?: number | bigint | undefined;
  readonly inclusive?: boolean | undefined;
  readonly exact?: boolean | undefined;
  readonly divisor?: number | undefined;
  readonly format?: string | undefined;
  readonly values?: readonly unknown[] | undefined;
  readonly options?: readonly unknown[] | undefined;
  readonly keys?: readonly string[] | undefined;
}

const TYPES = {
  number: 'number',
  int: 'whole-number',
  string: 'text',
  boolean: 'true-or-false',
  array: 'list',
  object: 'object',
  record: 'object',
} as const;

/** "a number of at most 5 is wanted here"; a rule of our own, which has its own sentence, is said as it is. */
export function shapeSays(issue: ShapeIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      if (issue.message.endsWith('received undefined')) return say('missing');
      return issue.expected && issue.expected in TYPES
        ? say(TYPES[issue.expected as keyof typeof TYPES])
        : say('other');
    case 'too_big':
      return limitSays(issue, Number(issue.maximum), 'most');
    case 'too_small':
      return limitSays(issue, Number(issue.minimum), 'least');
    case 'not_multiple_of':
      return say('multiple-of', { step: issue.divisor ?? 1 });
    case 'invalid_value':
      return oneOf(issue.values ?? []);
    case 'invalid_union':
      return issue.options?.length ? oneOf(issue.options) : say('other');
    case 'unrecognized_keys':
      return say('unknown', { names: (issue.keys ?? []).map((key) => `"${key}"`).join(', ') });
    case 'invalid_format':
      if (issue.format === 'date') return say('date');
      return issue.format === 'datetime' ? say('time') : say('other');
    case 'custom':
      return issue.message;
    default:
      return say('other');
  }
}

function limitSays({ origin, exact, inclusive }: ShapeIssue, limit: number, end: 'most' | 'least'): string {
  if (origin === 'array') return say(exact ? 'entries-exactly' : `entries-${end}`, { limit });
  if (origin === 'string') return say(exact ? 'letters-exactly' : `letters-${end}`, { limit });
  if (inclusive === false) return say(end === 'most' ? 'below' : 'above', { limit });
  return say(`at-${end}`, { limit });
}

function oneOf(values: readonly unknown[]): string {
  const names = values.map((value) => JSON.stringify(value));
  return names.length === 1
    ? say('exactly', { wanted: names[0]! })
    : say('one-of', { known: names.join(', ') });
}
