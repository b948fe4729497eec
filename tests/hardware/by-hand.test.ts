/** The session printed in hardware-notes/by-hand.md, played again: every answer as printed. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { BenchHead } from './bench/bench-head.ts';
import { buildFirmware } from './bench/build.ts';
import { PlainLine } from './bench/plain-line.ts';

const PAGE = new URL('../../hardware-notes/by-hand.md', import.meta.url);

it('goes as printed', async () => {
  const steps = readFileSync(PAGE, 'utf8')
    .split('\n')
    .flatMap((line) => /^ {4}(?:([<>]) |\()(.*)$/.exec(line)?.slice(1, 3) ?? []);
  const build = await buildFirmware('native');
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
  build.remove();
}, 120_000);
