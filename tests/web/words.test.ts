/** German that lacks a key does not compile; here stands what types cannot see. */
import { readFileSync, readdirSync } from 'node:fs';
import { afterEach, describe, expect, it } from 'vitest';
import { changeSettings } from '../../web/src/state/settings.ts';

const folder = new URL('../../web/src/text/', import.meta.url);
const files = readdirSync(folder).filter(
  (f) =>
    f.endsWith('.ts') &&
    f !== 'words.ts' &&
    /export const \w+Words = words\(/.test(readFileSync(new URL(f, folder), 'utf8')),
);
afterEach(() => changeSettings({ language: 'en' }));

const MARKS = ['<1>', '<2>', '<3>', '<4>'];
type Node = string | ((...args: string[]) => string) | { [key: string]: Node };

/** Every sentence by its path; a sentence with arguments is said with marks in their place. */
function sentences(node: Node, path = ''): [string, string][] {
  if (typeof node === 'string') return [[path, node]];
  if (typeof node === 'function') return [[path, node(...MARKS)]];
  return Object.entries(node).flatMap(([key, child]) => sentences(child, `${path}.${key}`));
}

it('finds the catalogues', () => expect(files.length).toBeGreaterThan(6));

describe.each(files)('%s', async (file) => {
  const module = (await import(new URL(file, folder).href)) as Record<string, unknown>;
  const catalogues = Object.entries(module).filter(
    (e): e is [string, () => Node] =>
      typeof e[1] === 'function' && e[0].endsWith('Words') && e[1].length === 0,
  );

  it.each(catalogues)('%s says everything in both languages, with every argument', (_, words) => {
    const en = new Map(sentences(words()));
    changeSettings({ language: 'de' });
    const de = new Map(sentences(words()));
    expect([...de.keys()]).toEqual([...en.keys()]);
    for (const [path, text] of en) {
      const other = de.get(path)!;
      // Where English needs no word German needs none, and nowhere else.
      expect(other.trim() === '', path).toBe(text.trim() === '');
      for (const mark of MARKS) expect(other.includes(mark), `${path}: ${other}`).toBe(text.includes(mark));
    }
  });
});
