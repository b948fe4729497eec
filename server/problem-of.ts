import { z } from 'zod';
import { isDeviceFault } from '../src/device/fault.ts';
import { type ShapeIssue, shapeSays } from '../src/sentence/shape.ts';
import { ReadingRefused } from '../src/calibrate/refusal.ts';
import { HttpProblem } from './problem.ts';
import { StoreProblem } from './store/open-store.ts';
import { say } from './api/sentences/bench.ts';

/** Errors of the rooms whose message is already one sentence for a person. */
const SENTENCES = new Set([
  'ProfileProblem',
  'SwatchSetProblem',
  'ExchangeProblem',
  'MixProblem',
  'CalibrationProblem',
]);

interface BodyParserError extends Error {
  readonly type: string;
  readonly status: number;
}

/** Any thrown thing as a problem; `undefined` for a fault of the program, which is logged and not shown. */
export function problemOf(error: unknown): HttpProblem | undefined {
  if (error instanceof HttpProblem) return error;
  if (isDeviceFault(error)) {
    return new HttpProblem(409, error.message, `/problems/instrument/${error.kind}`);
  }
  if (error instanceof ReadingRefused) {
    return new HttpProblem(409, error.message, `/problems/reading/${error.reason}`, {
      channels: error.channels,
    });
  }
  if (error instanceof StoreProblem) return new HttpProblem(503, error.message);
  // The rooms' own range errors are sentences; the engine's ("Invalid array length") are not and stay inside.
  if (error instanceof RangeError && error.message.endsWith('.')) return new HttpProblem(422, error.message);
  if (error instanceof Error && SENTENCES.has(error.name)) {
    const at = (error as Error & { at?: unknown }).at;
    return new HttpProblem(
      422,
      error.message,
      'about:blank',
      typeof at === 'string' && at !== '' ? { at } : {},
    );
  }
  if (isBodyParserError(error)) return bodyProblem(error);
  if (error instanceof URIError) return new HttpProblem(400, say('percent-code'));
  return undefined;
}

/** A refused body, with every refused member named. */
export function schemaProblem(error: z.ZodError, what: 'body' | 'query' | 'address'): HttpProblem {
  const issues = error.issues
    .slice(0, 20)
    .map((issue) => ({ at: place(issue.path), sentence: shapeSays(issue as ShapeIssue) }));
  const first = issues[0] ?? { at: '', sentence: say('not-as-described') };
  const more = error.issues.length - 1;
  const values = { what, place: first.at ? say('at-place', { place: first.at }) : '', why: first.sentence };
  return new HttpProblem(
    what === 'address' ? 404 : 400,
    more > 0 ? say('not-as-described-more', { ...values, count: more }) : say('not-as-described-at', values),
    'about:blank',
    { at: first.at, issues },
  );
}

function place(path: readonly PropertyKey[]): string {
  return path.map((p, i) => (typeof p === 'number' ? `[${p}]` : `${i ? '.' : ''}${String(p)}`)).join('');
}

function isBodyParserError(error: unknown): error is BodyParserError {
  return (
    error instanceof Error &&
    typeof (error as { type?: unknown }).type === 'string' &&
    typeof (error as { status?: unknown }).status === 'number'
  );
}

function bodyProblem(error: BodyParserError): HttpProblem {
  switch (error.type) {
    case 'entity.too.large':
      return new HttpProblem(413, say('body-large'));
    case 'entity.parse.failed':
      return new HttpProblem(400, say('body-not-json'));
    case 'charset.unsupported':
    case 'encoding.unsupported':
      return new HttpProblem(415, say('body-encoding'));
    default:
      return new HttpProblem(
        error.status >= 400 && error.status < 500 ? error.status : 400,
        say('body-unreadable'),
      );
  }
}
