import type { z } from 'zod';

/**
 * One row of the route table: what is asked for and what comes back, as zod schemas. The server answers it, the page
 * is typed by it and the OpenAPI document is made from it, so the three cannot drift apart.
 */
export interface Route<
  Params extends z.ZodType = z.ZodType,
  Query extends z.ZodType = z.ZodType,
  Body extends z.ZodType = z.ZodType,
  Answer extends z.ZodType = z.ZodType,
> {
  readonly method: 'GET' | 'POST' | 'PATCH' | 'PUT' | 'DELETE';
  /** With `:name` for each parameter, e.g. `/api/tubes/:tubeId`. */
  readonly path: string;
  /** One line for the OpenAPI document. */
  readonly summary: string;
  readonly params?: Params;
  readonly query?: Query;
  readonly body?: Body;
  /** Absent for 204. */
  readonly answer?: Answer;
  /** The status of success: 200 unless said. */
  readonly status?: 200 | 201 | 202 | 204;
  /** What the answer is sent as: JSON unless said. */
  readonly answerType?: 'application/json' | 'text/event-stream' | 'application/octet-stream' | 'text/plain';
}

/** Declares a route and keeps the types of its schemas. */
export function route<
  Params extends z.ZodType = z.ZodUndefined,
  Query extends z.ZodType = z.ZodUndefined,
  Body extends z.ZodType = z.ZodUndefined,
  Answer extends z.ZodType = z.ZodUndefined,
>(declared: Route<Params, Query, Body, Answer>): Route<Params, Query, Body, Answer> {
  return declared;
}

/** What a caller hands in and what it gets back, by route. */
export type ParamsOf<R> = R extends Route<infer P, z.ZodType, z.ZodType, z.ZodType> ? z.infer<P> : never;
export type QueryOf<R> = R extends Route<z.ZodType, infer Q, z.ZodType, z.ZodType> ? z.input<Q> : never;
export type BodyOf<R> = R extends Route<z.ZodType, z.ZodType, infer B, z.ZodType> ? z.input<B> : never;
export type AnswerOf<R> = R extends Route<z.ZodType, z.ZodType, z.ZodType, infer A> ? z.infer<A> : never;

/**
 * Fills a route's path.
 * @throws RangeError when a parameter is missing.
 */
export function pathFor(path: string, params: Readonly<Record<string, string>> = {}): string {
  return path.replace(/:([A-Za-z]+)/g, (_, name: string) => {
    const value = params[name];
    if (value === undefined) throw new RangeError(`The path ${path} needs "${name}".`);
    return encodeURIComponent(value);
  });
}
