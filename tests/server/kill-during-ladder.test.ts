import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import type { Ladder, Taken } from '../../server/api/ladders.ts';
import type { Palette } from '../../server/api/palettes.ts';
import { openStore } from '../../server/store/open-store.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const KILLS = 20;
const folder = mkdtempSync(join(tmpdir(), 'tintladder-kill-'));
let child: ChildProcess | undefined;

/** The program as `npm start` runs it, on any free port. */
async function startProgram(): Promise<string> {
  child = spawn(process.execPath, ['--import', 'tsx', 'server/main.ts', '--port', '0', '--data', folder], {
    cwd: ROOT,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const { stdout } = child;
  return new Promise((resolve, reject) => {
    let said = '';
    stdout!.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const at = /http:\/\/127\.0\.0\.1:\d+/.exec(said);
      if (at) resolve(at[0]);
    });
    child!.once('exit', () => reject(new Error(`The program ended before it said its address: ${said}`)));
  });
}

async function kill(): Promise<void> {
  const gone = new Promise((resolve) => child!.once('exit', resolve));
  child!.kill('SIGKILL');
  await gone;
}

async function post<T>(url: string, body?: unknown): Promise<T> {
  const response = await fetch(url, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  if (!response.ok) throw new Error(`${url} answered ${response.status}: ${await response.text()}`);
  return (await response.json()) as T;
}

afterAll(() => {
  child?.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
});

describe('the program killed outright during a ladder', () => {
  it(`keeps every reading it acknowledged, ${KILLS} times over`, { timeout: 300_000 }, async () => {
    let address = await startProgram();
    await post<Palette>(`${address}/api/demo-rack`);
    const ladder = await post<Ladder>(`${address}/api/ladders`, { tubeId: 'demo-deep-blue' });
    const rungIds = ladder.rungs.map((r) => r.id);
    const acknowledged = new Map<string, number[]>();
    let attempts = 0;
    for (let round = 0; round < KILLS; round += 1) {
      // Readings go in one after another as fast as they are acknowledged, until the program is gone.
      const reading = (async () => {
        for (;;) {
          attempts += 1;
          const n = attempts;
          const rungId = rungIds[n % rungIds.length]!;
          const values = [n / 1e6, 0.2, 0.3];
          const taken = await post<Taken>(`${address}/api/ladders/${ladder.id}/rungs/${rungId}/readings`, {
            source: 'typed',
            reading: {
              kind: 'reflectance',
              geometry: '45/0',
              scale: '0-1',
              wavelengths: [400, 500, 600],
              values,
            },
          });
          acknowledged.set(taken.reading!.id, values);
        }
      })().catch(() => undefined);
      // Once some were acknowledged, and then at another moment of a write each time.
      const before = acknowledged.size;
      while (acknowledged.size < before + 1 + (round % 3))
        await new Promise((resolve) => setTimeout(resolve, 1));
      await new Promise((resolve) => setTimeout(resolve, round * 2));
      await kill();
      await reading;
      address = await startProgram();
      const after = (await (await fetch(`${address}/api/ladders/${ladder.id}`)).json()) as Ladder;
      const kept = new Map(after.rungs.flatMap((r) => r.readings.map((x) => [x.id, x.values] as const)));
      for (const [id, values] of acknowledged)
        expect(kept.get(id), `after kill ${round + 1}`).toEqual(values);
    }
    await kill();
    const db = openStore(join(folder, 'tintladder.sqlite'));
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
    const stored = db.prepare<[], { n: number }>('select count(*) as n from reading').get()!.n;
    const undone = db
      .prepare<[], { n: number }>("select count(*) as n from history where kind = 'reading'")
      .get()!.n;
    // A reading and its place in the history are one: never the one without the other.
    expect(undone).toBe(stored);
    expect(acknowledged.size).toBeGreaterThanOrEqual(KILLS);
    // At most the one under way at each kill is stored without having been acknowledged.
    expect(stored - acknowledged.size).toBeLessThanOrEqual(KILLS);
    db.close();
  });
});
