import { chmodSync, existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { openStore } from '../../server/store/open-store.ts';
import { cli, FIXTURES, spawned } from './run-cli.ts';

const folder = mkdtempSync(join(tmpdir(), 'tintladder-store-cli-'));
const data = join(folder, 'data');
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('import, export and backup', () => {
  it('keep a real set of oil paints, give its readings back, and copy the store whole', async () => {
    const imported = await cli('import', join(FIXTURES, 'oil-ladders.json'), '--data', data);
    expect(imported.err).toBe('');
    expect(imported.code).toBe(0);
    expect(imported.out).toMatch(/20 tubes, 94 readings, 12 checks/);
    const back = JSON.parse((await cli('export', '--readings', '-o', '-', '--data', data)).out) as {
      swatches: unknown[];
      checks: unknown[];
    };
    expect(back.swatches).toHaveLength(94);
    expect(back.checks).toHaveLength(12);
    const copy = join(folder, 'copy.sqlite');
    expect((await cli('backup', copy, '--data', data)).code).toBe(0);
    const db = openStore(copy);
    // 94 readings and the 106 bare cards they were read over.
    expect(db.prepare('select count(*) as n from reading').get()).toEqual({ n: 200 });
    db.close();
    const twice = await cli('backup', copy, '--data', data);
    expect(twice.code).toBe(1);
    expect(twice.err.trim()).toBe(`${copy} is there already; name a new file.`);
  }, 120_000);

  it('say what is missing in one sentence', async () => {
    const none = await cli('export', '-o', '-', '--data', data);
    expect(none.code).toBe(1);
    expect(none.err.trim()).toMatch(/has no constants yet; fit it first, or export --readings\.$/);
    const empty = await cli('export', '-o', '-', '--data', join(folder, 'empty'));
    expect(empty.err.trim()).toMatch(/^The store holds no palette yet/);
    expect(existsSync(join(folder, 'empty', 'tintladder.sqlite'))).toBe(true);
  });
});

describe('read and ports', () => {
  it('read the practice instrument as they would a head', async () => {
    const { out, code } = await cli('read', '--port', 'practice', '--aperture', '20', '--json');
    expect(code).toBe(0);
    const reading = JSON.parse(out) as {
      channels: string[];
      dark: { counts: number[]; lamp: boolean };
      light: { counts: number[] };
    };
    expect(reading.light.counts).toHaveLength(reading.channels.length);
    expect(reading.dark.lamp).toBe(false);
    reading.light.counts.forEach((count, i) => expect(count).toBeGreaterThan(reading.dark.counts[i]!));
  });

  it('name a port that is not there', async () => {
    const { code, err } = await cli('read', '--port', '/dev/no-such-port');
    expect(code).toBe(1);
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(err).toContain('/dev/no-such-port');
  });

  it.runIf(process.platform === 'linux')(
    'ends though the list of ports never comes',
    () => {
      const stub = join(folder, 'udevadm');
      writeFileSync(stub, '#!/bin/sh\nexec sleep 120\n');
      chmodSync(stub, 0o755);
      const path = process.env['PATH'];
      process.env['PATH'] = `${folder}:${path}`;
      try {
        const { code, out } = spawned('ports', '--json');
        expect(code).toBe(0);
        expect(Array.isArray(JSON.parse(out))).toBe(true);
      } finally {
        process.env['PATH'] = path;
      }
    },
    100_000,
  ); // less than the list hangs; a process takes seconds to start

  it('list ports without failing where there are none', async () => {
    const { code, out } = await cli('ports', '--json');
    expect(code).toBe(0);
    expect(Array.isArray(JSON.parse(out))).toBe(true);
  });
});

describe('serve', () => {
  it('refuses to listen on anything but this computer', async () => {
    for (const host of ['0.0.0.0', '192.168.1.2', 'example.org']) {
      const { code, err } = await cli('serve', '--host', host, '--data', data);
      expect(code).toBe(2);
      expect(err).toMatch(/listens on this computer alone/);
    }
  });
});
