/**
 * A bench as a person meets it: the built pages, the server on a free port with an empty store of its own, and a real
 * Chromium. Console errors, page errors and requests that leave the machine fail the test that caused them.
 *
 *   const bench = await benchUnderTest();
 *   const page = await bench.page({ width: 390 });
 *   ... await bench.close();     // throws if anything was logged as an error
 */
import { execFileSync, spawn, type ChildProcess } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { ensureBrowser } from '../../scripts/find-browser.ts';

const ROOT = new URL('../../', import.meta.url).pathname;
/** Pictures of the screens; kept out of the repository, and compared by nobody but a person. */
export const PICTURES = join(ROOT, 'artefacts/screens');

export interface PageOptions {
  readonly width?: number;
  readonly height?: number;
  readonly theme?: 'middle' | 'light' | 'dark';
  readonly language?: 'en' | 'de';
  readonly reducedMotion?: boolean;
}

export interface BenchUnderTest {
  readonly address: string;
  /** Where phones pair; empty unless the bench was started with --pair. */
  readonly phoneAddress: string;
  readonly page: (options?: PageOptions) => Promise<Page>;
  /** Saves a picture under artefacts/screens. */
  readonly picture: (page: Page, name: string, fullPage?: boolean) => Promise<void>;
  /** Errors seen so far; a test that provokes one takes it out. */
  readonly errors: string[];
  /** @throws Error listing everything the pages logged as an error */
  readonly close: () => Promise<void>;
}

function newest(folder: string): number {
  let latest = 0;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    if (entry.name === 'dist' || entry.name === 'node_modules') continue;
    const path = join(folder, entry.name);
    latest = Math.max(latest, entry.isDirectory() ? newest(path) : statSync(path).mtimeMs);
  }
  return latest;
}

/** Builds the pages when they are older than what they are made from. */
function buildIfStale(): void {
  if (process.env['TINTLADDER_WEB_IS_BUILT']) return;
  const built = join(ROOT, 'web/dist/index.html');
  const sources = Math.max(newest(join(ROOT, 'web')), newest(join(ROOT, 'src')));
  if (existsSync(built) && statSync(built).mtimeMs > sources) return;
  const vite = join(ROOT, 'node_modules/vite/bin/vite.js');
  execFileSync(process.execPath, [vite, 'build', '--logLevel', 'error'], { cwd: ROOT, stdio: 'inherit' });
}

interface Served {
  readonly child: ChildProcess;
  readonly address: string;
  readonly phoneAddress: string;
}

function serve(data: string, more: readonly string[]): Promise<Served> {
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', 'server/main.ts', '--port', '0', '--data', data, ...more],
    { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'] },
  );
  return new Promise((resolve, reject) => {
    let said = '';
    const hear = (chunk: Buffer): void => {
      said += chunk.toString();
      const address = /http:\/\/127\.0\.0\.1:\d+/.exec(said)?.[0];
      // The last line of its greeting: all addresses were said before it.
      if (!address || !said.includes('The store is')) return;
      const phoneAddress = /Phones pair at (http:\/\/[^/]+)/.exec(said)?.[1] ?? '';
      resolve({ child, address, phoneAddress });
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.once('exit', (code) =>
      reject(new Error(`The server ended (${code}) before it answered:\n${said}`)),
    );
  });
}

/** Starts everything; call `close` in afterAll. `more` are further options of serving. */
export async function benchUnderTest(more: readonly string[] = []): Promise<BenchUnderTest> {
  buildIfStale();
  const data = mkdtempSync(join(tmpdir(), 'tintladder-browser-'));
  const { child, address, phoneAddress } = await serve(data, more);
  const browser: Browser = await chromium.launch({
    executablePath: ensureBrowser(),
    args: [
      '--no-sandbox',
      '--disable-background-networking',
      '--disable-component-update',
      '--no-first-run',
      '--force-color-profile=srgb',
    ],
  });
  const errors: string[] = [];
  const contexts: BrowserContext[] = [];
  const page = async (options: PageOptions = {}): Promise<Page> => {
    const { width = 1440, height = width < 600 ? 844 : 900, theme = 'middle', language = 'en' } = options;
    const context = await browser.newContext({
      viewport: { width, height },
      locale: language === 'de' ? 'de-DE' : 'en-GB',
      reducedMotion: options.reducedMotion ? 'reduce' : 'no-preference',
      acceptDownloads: true,
    });
    contexts.push(context);
    const opened = await context.newPage();
    opened.on('console', (m) => {
      if (m.type() === 'error') errors.push(`${opened.url()}: ${m.text()}`);
    });
    opened.on('pageerror', (error) => errors.push(`${opened.url()}: ${error.message}`));
    opened.on('request', (request) => {
      const url = request.url();
      const own = url.startsWith(address) || (phoneAddress !== '' && url.startsWith(phoneAddress));
      if (!own && !/^(data|blob):/.test(url)) errors.push(`left the machine: ${url}`);
    });
    await opened.addInitScript(
      ([t, l]) => {
        localStorage.setItem('tintladder.theme', t!);
        localStorage.setItem('tintladder.language', l!);
      },
      [theme, language],
    );
    return opened;
  };
  const picture = async (shown: Page, name: string, fullPage = false): Promise<void> => {
    mkdirSync(PICTURES, { recursive: true });
    await shown.screenshot({ path: join(PICTURES, `${name}.png`), fullPage });
  };
  const close = async (): Promise<void> => {
    for (const context of contexts) await context.close();
    await browser.close();
    await new Promise<void>((resolve) => {
      child.once('exit', () => resolve());
      child.kill('SIGTERM');
    });
    rmSync(data, { recursive: true, force: true });
    if (errors.length > 0) throw new Error(`The pages logged errors:\n${errors.join('\n')}`);
  };
  return { address, phoneAddress, page, picture, errors, close };
}
