import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { stampOf } from '../../cli/built.mjs';

let root: string;
const source = () => join(root, 'src/deep/one.ts');

beforeEach(() => {
  root = `${mkdtempSync(join(tmpdir(), 'tintladder-built-'))}/`;
  for (const room of ['cli', 'server', 'src/deep']) mkdirSync(join(root, room), { recursive: true });
  writeFileSync(source(), 'one');
});
afterEach(() => rmSync(root, { recursive: true }));

describe('the stamp a bundled command line is kept under', () => {
  it('stays while no source changes', () => {
    expect(stampOf(root)).toBe(stampOf(root));
  });

  it('changes with a source added, renamed away, of another size, or older than it was', () => {
    const seen = new Set([stampOf(root)]);
    writeFileSync(join(root, 'cli/two.ts'), '');
    seen.add(stampOf(root));
    rmSync(join(root, 'cli/two.ts'));
    writeFileSync(source(), 'three');
    seen.add(stampOf(root));
    utimesSync(source(), 1000, 1000);
    seen.add(stampOf(root));
    rmSync(source());
    seen.add(stampOf(root));
    expect(seen.size).toBe(5);
  });

  it('changes with the libraries installed', () => {
    const before = stampOf(root);
    writeFileSync(join(root, 'package-lock.json'), '{}');
    expect(stampOf(root)).not.toBe(before);
  });
});
