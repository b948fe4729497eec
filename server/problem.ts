import { recogniser } from '../src/sentence/recognise.ts';
import type { Problem } from './api/problem.ts';
import { CATALOGUES } from './api/sentences/all.ts';

/** A request that is refused, in one sentence for a person; it becomes problem details (RFC 9457). */
export class HttpProblem extends Error {
  override readonly name = 'HttpProblem';
  readonly status: number;
  readonly type: string;
  readonly extra: Readonly<Record<string, unknown>>;

  constructor(
    status: number,
    sentence: string,
    type = 'about:blank',
    extra: Readonly<Record<string, unknown>> = {},
  ) {
    super(sentence);
    this.status = status;
    this.type = type;
    this.extra = extra;
  }
}

export const notFound = (sentence: string): HttpProblem => new HttpProblem(404, sentence);
/** The request is well made and does not fit what there is now. */
export const conflict = (sentence: string, type?: string): HttpProblem =>
  new HttpProblem(409, sentence, type);
/** The body was read and its content cannot be taken. */
export const unusable = (sentence: string, at?: string): HttpProblem =>
  new HttpProblem(422, sentence, 'about:blank', at === undefined || at === '' ? {} : { at });

const TITLES: Readonly<Record<number, string>> = {
  400: 'Bad request',
  403: 'Refused',
  404: 'Not found',
  405: 'Method not allowed',
  409: 'Not now',
  413: 'Too large',
  415: 'Unsupported media type',
  422: 'Cannot be used',
  500: 'Fault in the program',
  501: 'Not built in',
  503: 'Not available',
};

const recognise = recogniser(CATALOGUES);

export function problemDetails(problem: HttpProblem): Problem {
  const said = recognise(problem.message);
  return {
    type: problem.type,
    title: TITLES[problem.status] ?? 'Problem',
    status: problem.status,
    detail: problem.message,
    ...(said ? { code: said.code, values: { ...said.values } } : {}),
    ...problem.extra,
  };
}
