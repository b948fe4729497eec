/** The package as another program imports it: by name, built, without a server or a browser. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { build } from 'vite';
import { beforeAll, describe, expect, it } from 'vitest';
import { writeProfile } from '../../src/profile/write.ts';
import { inventedProfile } from './invented-profile.ts';

const root = new URL('../../', import.meta.url).pathname;

describe('the library', () => {
  beforeAll(() => {
    const tsc = spawnSync(
      process.execPath,
      [join(root, 'node_modules/typescript/bin/tsc'), '-p', 'tsconfig.library.json'],
      { cwd: root },
    );
    expect(String(tsc.stdout)).toBe('');
  });

  it('predicts a mix in a program that imports it by name', () => {
    const file = join(mkdtempSync(join(tmpdir(), 'tintladder-')), 'profile.json');
    writeFileSync(file, writeProfile(inventedProfile()));
    const program = `
      import { readFileSync } from 'node:fs';
      import { paletteOf, predictWithCovariance, readProfile } from 'tintladder';
      const palette = paletteOf(readProfile(readFileSync(process.argv[1], 'utf8')));
      const { measured, labRegion } = predictWithCovariance(palette, { blue: 1, white: 4 });
      console.log(measured.length, labRegion.radius > 0, labRegion.lab.b < -10);`;
    const out = execFileSync(process.execPath, ['--input-type=module', '-e', program, file], {
      cwd: root,
      encoding: 'utf8',
    });
    expect(out.trim()).toBe('36 true true');
  });

  it('is under 40 kB gzip for reading a profile and predicting', async () => {
    const entry = join(mkdtempSync(join(tmpdir(), 'tintladder-')), 'entry.js');
    writeFileSync(
      entry,
      `export { readProfile, paletteOf, predictWithCovariance } from ${JSON.stringify(join(root, 'dist/library/index.js'))};`,
    );
    const made = await build({
      configFile: false,
      logLevel: 'error',
      root: tmpdir(),
      build: {
        write: false,
        minify: true,
        rolldownOptions: { input: entry, preserveEntrySignatures: 'strict' },
      },
    });
    const output = (Array.isArray(made) ? made[0]! : (made as { output: unknown })) as {
      output: { code?: string }[];
    };
    const bytes = gzipSync(output.output.map((o) => o.code ?? '').join('')).length;
    console.log(`read + predict: ${(bytes / 1000).toFixed(1)} kB gzip`);
    expect(bytes).toBeLessThan(40_000);
  });
});
