/** The table of hardware-notes/faults.md names a test for every row: each of them is there. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { FAULT_KINDS } from '../../src/device/fault.ts';

const page = readFileSync(new URL('../../hardware-notes/faults.md', import.meta.url), 'utf8');
const rows = page
  .split('## How many')[0]!
  .split('\n')
  .filter((line) => /^\| (?!---|what happens)/.test(line));

it('names a test that is there in every row', () => {
  const missing = rows.filter((row) => {
    const [, file, title] = /`([\w/-]+): ([^`]+)` \|$/.exec(row) ?? [];
    if (!file || !title) return true;
    const source = readFileSync(new URL(`../${file}.test.ts`, import.meta.url), 'utf8');
    return !source.includes(title);
  });
  expect(missing).toEqual([]);
  expect(rows.length).toBeGreaterThan(55);
});

it('names no fault that there is not', () => {
  const named = rows.flatMap((row) =>
    [...row.split('|')[2]!.matchAll(/`([a-z-]+)`/g)].map(([, kind]) => kind!),
  );
  expect(
    named.filter((kind) => kind !== 'lost' && !(FAULT_KINDS as readonly string[]).includes(kind)),
  ).toEqual([]);
});
