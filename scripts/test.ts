/**
 * Everything that must pass, behind one command: `npm test`. Finds or installs a browser, builds the pages the
 * browser tests open, runs both projects, and ends with the sum over them alone on a line.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureBrowser } from './find-browser.ts';

interface Summary {
  numPassedTests: number;
  numFailedTests: number;
  numPendingTests: number;
  numTodoTests: number;
  numFailedTestSuites: number;
  success: boolean;
}

const bin = (name: string): string => new URL(`../node_modules/${name}`, import.meta.url).pathname;
const run = (args: string[], env: Record<string, string> = {}): number =>
  spawnSync(process.execPath, args, { stdio: 'inherit', env: { ...process.env, ...env } }).status ?? 1;

const browser = ensureBrowser();
if (run([bin('vite/bin/vite.js'), 'build', '--logLevel', 'warn']) !== 0) process.exit(1);

const folder = mkdtempSync(join(tmpdir(), 'tintladder-test-'));
const totals = { passed: 0, failed: 0, skipped: 0 };
let ok = true;
for (const project of ['unit', 'browser']) {
  const report = join(folder, `${project}.json`);
  const status = run(
    [
      bin('vitest/vitest.mjs'),
      'run',
      '--project',
      project,
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${report}`,
    ],
    { TINTLADDER_BROWSER: browser, TINTLADDER_WEB_IS_BUILT: '1' },
  );
  const summary = JSON.parse(readFileSync(report, 'utf8')) as Summary;
  totals.passed += summary.numPassedTests;
  totals.failed += summary.numFailedTests;
  totals.skipped += summary.numPendingTests + summary.numTodoTests;
  if (status !== 0 || !summary.success) {
    ok = false;
    if (summary.numFailedTests === 0) totals.failed += Math.max(1, summary.numFailedTestSuites);
  }
}
rmSync(folder, { recursive: true, force: true });
if (totals.passed === 0) ok = false;
if (totals.skipped > 0) console.log(`${totals.skipped} skipped`);
console.log(`${totals.passed} passed, ${totals.failed} failed`);
process.exitCode = ok ? 0 : 1;
