import express, { type Express, type Request, type Response } from 'express';
import type { z } from 'zod';
import type { Route } from './api/route.ts';
import { schemaProblem } from './problem-of.ts';

/** What a handler is handed: everything already checked against the route's schemas. */
export interface Asked<P, Q, B> {
  readonly params: P;
  readonly query: Q;
  readonly body: B;
  readonly req: Request;
  readonly res: Response;
}

/** Handlers may answer themselves (files, event streams) by returning `ANSWERED`. */
export const ANSWERED = Symbol('answered');

export interface AnswerOptions {
  /** Checks every answer against its schema, too: on in tests. */
  readonly checkAnswers: boolean;
  readonly bodyLimit: string;
}

export type Answering = <P extends z.ZodType, Q extends z.ZodType, B extends z.ZodType, A extends z.ZodType>(
  route: Route<P, Q, B, A>,
  handle: (
    asked: Asked<z.infer<P>, z.infer<Q>, z.infer<B>>,
  ) => Promise<z.input<A> | symbol> | z.input<A> | symbol,
) => void;

/** Hangs a row of the route table into the app: its schemas are the only way in. */
export function answering(app: Express, options: AnswerOptions): Answering {
  const parseJson = express.json({ limit: options.bodyLimit, strict: true });
  return (route, handle) => {
    const method = route.method.toLowerCase() as 'get' | 'post' | 'patch' | 'put' | 'delete';
    const work = async (req: Request, res: Response): Promise<void> => {
      const answer = await handle({
        params: parsed(route.params, req.params, 'address'),
        query: parsed(route.query, req.query, 'query'),
        body: parsed(route.body, req.body, 'body'),
        req,
        res,
      });
      if (answer === ANSWERED) return;
      res.setHeader('cache-control', 'no-store');
      if (route.answer === undefined) {
        res.status(route.status ?? 204).end();
        return;
      }
      if (options.checkAnswers) route.answer.parse(answer);
      res.status(route.status ?? 200).json(answer);
    };
    if (route.body === undefined) app[method](route.path, work);
    else app[method](route.path, parseJson, work);
  };
}

function parsed<S extends z.ZodType>(
  schema: S | undefined,
  value: unknown,
  what: 'body' | 'query' | 'address',
): z.infer<S> {
  if (schema === undefined) return undefined as z.infer<S>;
  const result = schema.safeParse(value);
  if (!result.success) throw schemaProblem(result.error, what);
  return result.data;
}
