/**
 * Runs every bench/*.bench.ts in turn, each in a process of its own, or those whose name holds the words given:
 *
 *   npm run bench            all of them
 *   npm run bench -- mix     those with "mix" in the name
 *
 * Each prints its own table: medians and ratios against a reference taken in the same run. Nothing is asserted, for
 * a machine's speed is no property of the program.
 */
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';

const folder = new URL('../bench/', import.meta.url);
const words = process.argv.slice(2);
const files = readdirSync(folder)
  .filter((f) => f.endsWith('.bench.ts') && (words.length === 0 || words.some((w) => f.includes(w))))
  .sort();
if (files.length === 0) {
  console.error(`No bench matches ${words.join(', ') || 'bench/*.bench.ts'}.`);
  process.exit(1);
}
let failed = 0;
for (const file of files) {
  console.log(`\n== ${file}`);
  const run = spawnSync(process.execPath, ['--import', 'tsx', new URL(file, folder).pathname], {
    stdio: 'inherit',
  });
  if (run.status !== 0) failed++;
}
process.exitCode = failed === 0 ? 0 : 1;
