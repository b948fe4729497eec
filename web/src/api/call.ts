/**
 * Calls of the bench's own server, typed by its route table (types only; nothing of the server is in the page).
 *
 *   const tubes = await call('listTubes');
 *   await call('weighRung', { params: { ladderId, rungId }, body: { grams: [2.01, 8.04] } });
 */
import type { AnswerOf, BodyOf, ParamsOf, QueryOf } from '../../../server/api/route.ts';
import type { ROUTES, RouteName } from '../../../server/api/table.ts';
import { PATHS } from './paths.ts';
import { ProblemError, problemOf } from './problem.ts';
import { shellWords } from '../text/shell.ts';

type Routes = typeof ROUTES;
/** What a route answers. */
export type Answer<N extends RouteName> = AnswerOf<Routes[N]>;
/** What a route takes as its body. */
export type Body<N extends RouteName> = BodyOf<Routes[N]>;

type Given<K extends string, T> = [T] extends [undefined] ? unknown : { readonly [key in K]: T };
type Maybe<K extends string, T> = [T] extends [undefined] ? unknown : { readonly [key in K]?: T };
export type CallOptions<N extends RouteName> = Given<'params', ParamsOf<Routes[N]>> &
  Given<'body', BodyOf<Routes[N]>> &
  Maybe<'query', QueryOf<Routes[N]>> & { readonly signal?: AbortSignal };
/** The options may be left out where the route needs neither parameters nor a body. */
type Args<N extends RouteName> =
  Record<never, never> extends CallOptions<N> ? [options?: CallOptions<N>] : [options: CallOptions<N>];

interface Loose {
  readonly params?: Readonly<Record<string, string>>;
  readonly query?: Readonly<Record<string, string | undefined>>;
  readonly body?: unknown;
  readonly signal?: AbortSignal;
}

/** Where a route is, for links and downloads. */
export function urlOf<N extends RouteName>(
  name: N,
  params: Readonly<Record<string, string>> = {},
  query: Readonly<Record<string, string | undefined>> = {},
): string {
  const path = PATHS[name].slice(PATHS[name].indexOf(' ') + 1);
  const filled = path.replaceAll(/:([A-Za-z]+)/g, (_, key: string) => encodeURIComponent(params[key] ?? ''));
  const asked = new URLSearchParams();
  for (const [key, value] of Object.entries(query)) if (value !== undefined) asked.set(key, value);
  return asked.size > 0 ? `${filled}?${asked}` : filled;
}

/**
 * @throws ProblemError for a refusal, or for no answer (status 0: the bench has stopped, or the network is away).
 */
export async function call<N extends RouteName>(name: N, ...[options]: Args<N>): Promise<Answer<N>> {
  const { params = {}, query = {}, body, signal } = (options ?? {}) as Loose;
  const method = PATHS[name].slice(0, PATHS[name].indexOf(' '));
  const headers: Record<string, string> = { accept: 'application/json' };
  const init: RequestInit = { method, headers };
  if (body !== undefined || method !== 'GET') {
    headers['content-type'] = 'application/json';
    init.body = JSON.stringify(body ?? {});
  }
  if (signal) init.signal = signal;
  let answer: Response;
  try {
    answer = await fetch(urlOf(name, params, query), init);
  } catch (cause) {
    if (signal?.aborted) throw cause;
    throw new ProblemError(0, shellWords().noServerTitle, shellWords().noServer);
  }
  if (!answer.ok) throw await problemOf(answer);
  if (answer.status === 204) return undefined as Answer<N>;
  return (await answer.json()) as Answer<N>;
}
