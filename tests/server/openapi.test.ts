import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROUTES, type RouteName } from '../../server/api/table.ts';
import type { Route } from '../../server/api/route.ts';
import { TestBench } from './bench-client.ts';

interface Operation {
  operationId: string;
  parameters?: { name: string; in: string; required: boolean }[];
  requestBody?: { content: Record<string, { schema: object }> };
  responses: Record<string, { content?: Record<string, { schema: object }> }>;
}
interface Document {
  openapi: string;
  paths: Record<string, Record<string, Operation>>;
}

/** Ajv is a validator of JSON Schema draft 2020-12 that shares no code with the one the server checks with. */
const ajv = new Ajv2020({ strict: true, strictTypes: false, allErrors: false });
(addFormats as unknown as (ajv: Ajv2020) => void)(ajv);

const bench = new TestBench();
let document: Document;
beforeAll(async () => {
  await bench.open();
  document = (await bench.get('openapi')) as unknown as Document;
}, 60_000);
afterAll(() => bench.close());

const operations = (): { path: string; method: string; operation: Operation }[] =>
  Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({ path, method, operation })),
  );

describe('the OpenAPI document', () => {
  it('is 3.1 and names every route of the table once', () => {
    expect(document.openapi).toBe('3.1.0');
    expect(
      operations()
        .map((o) => o.operation.operationId)
        .toSorted(),
    ).toEqual(Object.keys(ROUTES).toSorted());
  });

  it('holds only schemas that an independent validator compiles in strict mode', () => {
    for (const { operation } of operations()) {
      const schemas = [
        ...Object.values(operation.requestBody?.content ?? {}),
        ...Object.values(operation.responses).flatMap((r) => Object.values(r.content ?? {})),
      ];
      for (const { schema } of schemas)
        expect(() => ajv.compile(schema), operation.operationId).not.toThrow();
    }
  });

  it('names each parameter of each path', () => {
    for (const { path, operation } of operations()) {
      const inPath = [...path.matchAll(/\{([A-Za-z]+)\}/g)].map((m) => m[1]);
      const named = (operation.parameters ?? []).filter((p) => p.in === 'path').map((p) => p.name);
      expect(new Set(named), path).toEqual(new Set(inPath));
    }
  });

  it('is what the running server does: every route is there, and plain answers are as described', async () => {
    await bench.readyWithDemo();
    const ladder = await bench.get('startLadder', { body: { tubeId: 'demo-deep-blue' } });
    const ids: Record<string, string> = {
      paletteId: (await bench.get('state')).currentPaletteId!,
      tubeId: 'demo-deep-blue',
      ladderId: ladder.id,
      rungId: ladder.rungs[0]!.id,
      readingId: 'nobody',
      fitId: 'nobody',
      profileId: 'nobody',
      checkId: 'nobody',
      side: 'black',
    };
    const skip = new Set<RouteName>(['events', 'backup']);
    for (const [name, route] of Object.entries(ROUTES) as [RouteName, Route][]) {
      if (skip.has(name)) continue;
      const path = route.path.replace(/:([A-Za-z]+)/g, (_, p: string) => ids[p]!);
      // Without a body the schema refuses: that shows that the route is there and changes nothing.
      const response = await fetch(bench.address + path, { method: route.method });
      const text = await response.text();
      expect(text, name).not.toContain('/api/openapi.json lists what there is');
      const described =
        document.paths[route.path.replace(/:([A-Za-z]+)/g, '{$1}')]![route.method.toLowerCase()]!;
      const answer = described.responses[String(response.status)] ?? described.responses['default']!;
      const type = response.headers.get('content-type')?.split(';')[0];
      if (!type?.includes('json')) continue;
      const schema = answer.content?.[type]?.schema;
      expect(schema, `${name} answered ${response.status} as ${type}`).toBeDefined();
      const valid = ajv.compile(schema!);
      expect(valid(JSON.parse(text)), `${name}: ${ajv.errorsText(valid.errors)}`).toBe(true);
    }
  });
});
