/** The session printed in hardware-notes/by-hand.md, played again: every answer as printed. */
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { cli } from '../cli/run-cli.ts';
import { BenchHead } from './bench/bench-head.ts';
import { buildFirmware } from './bench/build.ts';
import type { Build } from './bench/build.ts';
import { PlainLine } from './bench/plain-line.ts';

const PAGE = readFileSync(new URL('../../hardware-notes/by-hand.md', import.meta.url), 'utf8');
/** What the page prints under a command: the next indented lines after it. */
function printedAfter(command: string): string {
  const after = PAGE.slice(PAGE.indexOf(`    ${command}\n`) + command.length + 5);
  return /^(?: {4}.*\n)+/m.exec(after)![0].replaceAll(/^ {4}/gm, '');
}

let build: Build;
beforeAll(async () => {
  build = await buildFirmware('native');
}, 120_000);
afterAll(() => build.remove());

it('goes as printed', async () => {
  const steps = PAGE.split('\n').flatMap((line) => /^ {4}(?:([<>]) |\()(.*)$/.exec(line)?.slice(1, 3) ?? []);
  const bench = await BenchHead.native(build.folder, '--fast');
  const line = new PlainLine(bench.path);
  let answers = 0;
  for (let i = 0; i < steps.length; i += 2) {
    const [kind, text] = [steps[i], steps[i + 1]!];
    if (kind === '>') line.send(`${text}\n`);
    else if (kind === '<') {
      expect(await line.line()).toBe(text);
      answers++;
    } else if (text.startsWith('press the button')) {
      expect(await line.quiet()).toBe('');
      await bench.tell('button 100');
      // The contacts settle and the frame is taken before anything else is typed.
      await expect.poll(() => line.ask('STAT:OPER:COND?'), { timeout: 20_000 }).toBe('0');
    }
  }
  expect(answers).toBeGreaterThan(20);
  expect(await line.quiet()).toBe('');
  line.close();
  await bench.stop();
}, 60_000);

it('goes the same with the program, to the letter', async () => {
  const bench = await BenchHead.native(build.folder);
  try {
    const { code, out, err } = await cli('read', '--port', bench.path);
    expect({ code, out, err }).toEqual({
      code: 0,
      out: printedAfter('tintladder read --port ./head'),
      err: '',
    });
  } finally {
    await bench.stop();
  }
}, 60_000);

it.runIf(process.platform === 'linux')('lists ports as printed', async () => {
  // What udevadm says of such a port, and of one that a list leaves out.
  const said = [
    ['P: /devices/usb1/1-1/1-1:1.0/ttyUSB0/tty/ttyUSB0', 'N: ttyUSB0', 'E: DEVNAME=/dev/ttyUSB0'],
    ['E: ID_VENDOR_ID=1A86', 'E: ID_MODEL_ID=7523', 'E: ID_VENDOR_ENC=USB\\x20bridge', ''],
    ['P: /devices/virtual/tty/tty1', 'N: tty1', 'E: DEVNAME=/dev/tty1', ''],
  ];
  const folder = mkdtempSync(join(tmpdir(), 'udev-'));
  const stub = join(folder, 'udevadm');
  writeFileSync(stub, `#!/bin/sh\ncat <<'EOF'\n${said.flat().join('\n')}\nEOF\n`);
  chmodSync(stub, 0o755);
  const path = process.env['PATH'];
  process.env['PATH'] = `${folder}:${path}`;
  try {
    expect((await cli('ports')).out).toBe(printedAfter('tintladder ports'));
  } finally {
    process.env['PATH'] = path;
    rmSync(folder, { recursive: true, force: true });
  }
});
