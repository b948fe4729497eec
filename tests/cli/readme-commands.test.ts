import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

/*
 * The commands of the README, as a reader would paste them into a shell, in their order. The profile goes to a folder
 * of the test's own. `npm ci && npm test` is this very run; what `npm start` serves is under test in tests/server and
 * tests/browser.
 */
const CHECKOUT = fileURLToPath(new URL('../../', import.meta.url));
const README = readFileSync(join(CHECKOUT, 'README.md'), 'utf8');
const commands = [...README.matchAll(/^ {4}(npx tintladder .*)$/gm)].map(([, line]) => line!);
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tintladder-readme-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the commands of the README', () => {
  it('are those for a new user: fit, check, predict, help', () => {
    expect(commands.map((line) => line.split(' ')[2])).toEqual(['fit', 'check', 'predict', '--help']);
  });

  it.each(commands)('%s', (line) => {
    const ran = spawnSync(line.replaceAll('profile.json', join(folder, 'profile.json')), {
      cwd: CHECKOUT,
      shell: true,
      encoding: 'utf8',
      maxBuffer: 64 * 1024 * 1024,
    });
    expect(ran.stderr).toBe('');
    expect(ran.status).toBe(0);
    expect(ran.stdout).not.toBe('');
    if (line.includes('--json')) expect(() => JSON.parse(ran.stdout) as unknown).not.toThrow();
  });

  it('name only files that are there', () => {
    for (const [, file] of README.matchAll(/`((?:docs|examples|hardware-notes)\/[^`\s]*)`/g))
      expect(existsSync(join(CHECKOUT, file!)), file).toBe(true);
  });
});
