/** What changed between two profiles. Run: node --import tsx examples/compare-two-profiles.ts [older.json newer.json] */
import { readFileSync } from 'node:fs';
import { compareProfiles, readProfile } from 'tintladder';

const here = new URL('invented-palette.json', import.meta.url);
const [older, newer] = [2, 3].map((i) => readProfile(readFileSync(process.argv[i] ?? here, 'utf8')));
// Without a second file: the same palette with its blue let down by a fifth.
const weaker = (values: readonly number[]): number[] => values.map((v) => 0.8 * v);
const second = process.argv[3]
  ? newer!
  : {
      ...newer!,
      tubes: newer!.tubes.map((t) => (t.id === 'blue' ? { ...t, K: weaker(t.K), S: weaker(t.S) } : t)),
    };
for (const tube of compareProfiles(older!, second).tubes) {
  console.log(`${tube.olderId} to ${tube.newerId}: ${tube.words.join(' ')}`);
}
