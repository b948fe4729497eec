import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TestBench } from './bench-client.ts';

const SET = fileURLToPath(new URL('../fixtures/paint/transport-bands.json', import.meta.url));

const bench = new TestBench();
beforeAll(async () => {
  await bench.open();
  const text = readFileSync(SET, 'utf8');
  await bench.get('importFile', { body: { fileName: 'transport-bands.json', text } });
  let fit = await bench.get('startFit', { body: {} });
  const params = { fitId: fit.id };
  while (fit.state === 'running' || fit.state === 'pending') {
    await new Promise((resolve) => setTimeout(resolve, 100));
    fit = await bench.get('getFit', { params });
  }
  expect(fit.state).toBe('complete');
}, 120_000);
afterAll(() => bench.close());

describe('the checks of a palette', () => {
  it('are worked out once for a profile, beside the server’s own thread', { timeout: 60_000 }, async () => {
    const { mixing } = bench.started.bench;
    let asked = 0;
    const ask = mixing.ask.bind(mixing);
    mixing.ask = (profile, job) => {
      asked += 1;
      return ask(profile, job);
    };
    const first = await bench.get('listChecks');
    const second = await bench.get('listChecks');
    expect(first.summary!.count).toBe(120);
    expect(second).toEqual(first);
    expect(asked).toBe(1);
  });

  it('are worked out anew where a reading came in, and only there', { timeout: 60_000 }, async () => {
    const { checks } = await bench.get('listChecks');
    const { id, masses } = checks[0]!;
    const made = await bench.get('createCheck', { body: { masses, title: 'read by hand' } });
    expect(made.result).toBeNull();
    const { form, values } = { form: checks[1]!.result!, values: checks[0]!.result!.measured };
    expect(form.channels.length).toBe(values.length);
    const { check } = await bench.get('readCheck', {
      params: { checkId: made.id },
      body: {
        source: 'typed',
        reading: {
          kind: 'reflectance',
          geometry: '45/0',
          scale: '0-1',
          wavelengths: Array.from({ length: values.length }, (_, i) => 380 + 10 * i),
          values,
        },
      },
    });
    expect(check.result!.deltaE00).toBeCloseTo(checks[0]!.result!.deltaE00, 6);
    expect(check.id).not.toBe(id);
    expect((await bench.get('listChecks')).summary!.count).toBe(121);
  });
});
