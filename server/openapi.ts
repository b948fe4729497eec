import { z } from 'zod';
import { problemSchema } from './api/problem.ts';
import type { Route } from './api/route.ts';
import { ROUTES } from './api/table.ts';
import { VERSION } from './version.ts';

type Json = Record<string, unknown>;

/** The interface as an OpenAPI 3.1 document, made from the schemas that the server itself checks with. */
export function openApiDocument(): { openapi: string } & Json {
  const paths: Record<string, Json> = {};
  for (const [name, route] of Object.entries(ROUTES) as [string, Route][]) {
    const path = route.path.replace(/:([A-Za-z]+)/g, '{$1}');
    paths[path] = { ...paths[path], [route.method.toLowerCase()]: operation(name, route) };
  }
  return {
    openapi: '3.1.0',
    info: {
      title: 'Tintladder',
      version: VERSION,
      description:
        'The bench of one painter, on 127.0.0.1. Errors are problem details (RFC 9457) whose `detail` is one sentence.',
    },
    servers: [{ url: '/' }],
    paths,
  };
}

function operation(name: string, route: Route): Json {
  const status = route.status ?? (route.answer ? 200 : 204);
  return {
    operationId: name,
    summary: route.summary,
    ...parametersOf(route),
    ...(route.body
      ? {
          requestBody: {
            required: true,
            content: { 'application/json': { schema: schemaOf(route.body, 'input') } },
          },
        }
      : {}),
    responses: {
      [status]: {
        description: route.summary,
        ...(route.answer
          ? {
              content: {
                [route.answerType ?? 'application/json']: { schema: schemaOf(route.answer, 'output') },
              },
            }
          : {}),
      },
      default: {
        description: 'Refused, with the reason in one sentence',
        content: { 'application/problem+json': { schema: schemaOf(problemSchema, 'output') } },
      },
    },
  };
}

function parametersOf(route: Route): Json {
  const of = (schema: z.ZodType | undefined, where: 'path' | 'query'): Json[] => {
    if (!schema) return [];
    const { properties = {}, required = [] } = schemaOf(schema, 'input') as {
      properties?: Record<string, Json>;
      required?: string[];
    };
    return Object.entries(properties).map(([name, property]) => ({
      name,
      in: where,
      required: where === 'path' || required.includes(name),
      schema: property,
    }));
  };
  const parameters = [...of(route.params, 'path'), ...of(route.query, 'query')];
  return parameters.length > 0 ? { parameters } : {};
}

/** Schemas are written out in place: `$defs` inside an operation would not be found by OpenAPI tools. */
function schemaOf(schema: z.ZodType, io: 'input' | 'output'): Json {
  const made = z.toJSONSchema(schema, { io, target: 'draft-2020-12' }) as Json;
  const { $schema: _dialect, $defs = {}, ...rest } = made;
  return inlined(rest, $defs as Record<string, Json>) as Json;
}

function inlined(value: unknown, defs: Readonly<Record<string, Json>>): unknown {
  if (Array.isArray(value)) return value.map((item) => inlined(item, defs));
  if (typeof value !== 'object' || value === null) return value;
  const { $ref, id: _id, ...rest } = value as { $ref?: unknown; id?: unknown };
  if (typeof $ref === 'string' && $ref.startsWith('#/$defs/')) {
    return inlined({ ...defs[$ref.slice('#/$defs/'.length)], ...rest }, defs);
  }
  // `id` is an annotation only where it is text: a schema may well have a member called id.
  const members = typeof _id === 'object' ? { ...rest, id: _id } : rest;
  return Object.fromEntries(Object.entries(members).map(([name, member]) => [name, inlined(member, defs)]));
}
