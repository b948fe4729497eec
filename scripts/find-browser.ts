import { execFileSync, spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium } from 'playwright-core';

/** Names under which Linux, macOS and Windows installations keep a Chromium-family browser on the PATH. */
const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'chrome', 'msedge'];

function usable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * The browser the tests drive: `TINTLADDER_BROWSER` if set, else the first Chromium on the PATH, else the browser
 * tool's own download. `undefined` when there is none.
 */
export function findBrowser(): string | undefined {
  const asked = process.env['TINTLADDER_BROWSER'];
  if (asked) {
    if (usable(asked)) return asked;
    throw new Error(
      `TINTLADDER_BROWSER names ${asked}, which cannot be run; point it at a Chromium or unset it.`,
    );
  }
  for (const dir of (process.env['PATH'] ?? '').split(delimiter)) {
    for (const name of NAMES) if (dir && usable(join(dir, name))) return join(dir, name);
  }
  const own = chromium.executablePath();
  return own && existsSync(own) ? own : undefined;
}

/** Finds a browser or installs one, saying on standard output which it took and how. */
export function ensureBrowser(): string {
  const found = findBrowser();
  if (found) {
    console.log(`Browser for the tests: ${found}`);
    return found;
  }
  if (process.getuid?.() === 0 && existsSync('/etc/debian_version')) {
    console.log("No browser found; installing Debian's chromium package.");
    execFileSync('apt-get', ['update', '-qq'], { stdio: ['ignore', 'ignore', 'inherit'] });
    execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
  } else {
    console.log('No browser found; asking the browser tool for its own download of Chromium.');
    const cli = new URL('../node_modules/playwright-core/cli.js', import.meta.url).pathname;
    spawnSync(process.execPath, [cli, 'install', 'chromium'], { stdio: 'inherit' });
  }
  const now = findBrowser();
  if (!now) {
    throw new Error('No Chromium could be installed; install one and set TINTLADDER_BROWSER to its path.');
  }
  console.log(`Browser for the tests: ${now}`);
  return now;
}
