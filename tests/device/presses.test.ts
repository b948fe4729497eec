/**
 * A press of the head's own button belongs to what the button was armed for when it was pressed, and to nothing else.
 * Wire transcripts over a real pseudo-terminal, with a clock that stands still, so that nothing here depends on time;
 * then a head that is pressed and armed anew as fast as it goes.
 */
import { describe, expect, it } from 'vitest';
import { connectHead } from '../../src/device/head/connect.ts';
import type { Head } from '../../src/device/head/head.ts';
import { SerialTransport } from '../../src/device/serial/serial-transport.ts';
import { systemClock } from '../../src/device/serial/system-clock.ts';
import { HeldClock } from './held-clock.ts';
import { plainHead } from './simulated-head/plain-head.ts';
import { simulatedHead, transcript } from './simulated-head/simulated-head.ts';
import type { Pair } from './simulated-head/simulated-head.ts';

const POLL_MS = 100;
const QUIET_MS = 250;
const RESYNC_MS = 150;
const ARM: Pair = ['TRIG:SOUR EXT;:SYST:ERR?', '0,"No error"'];
const WAIT = 'ABOR;:TRIG:SOUR EXT;:SENS:FRAM?;:INIT;:TRIG:COUN?;:SYST:ERR?';
const WAIT_UNCOUNTED = 'ABOR;:TRIG:SOUR EXT;:SENS:FRAM?;:INIT;:SYST:ERR?';
const STATE = 'STAT:OPER:COND?';
const DISARM: Pair = ['ABOR;:TRIG:SOUR IMM;:SYST:ERR?', '0,"No error"'];
const frame = (n: number): string => `${n},0,16,1.0000E-2,1,2.981E2,2,1200,34000`;

interface Play {
  readonly head: Head;
  /** Names of what was told, with what the button was armed for. */
  readonly told: readonly string[];
  /** Waits for a timer of so many ms to be set, and lets it be due. */
  readonly due: (ms: number) => Promise<void>;
}

function listen(head: Head): string[] {
  const told: string[] = [];
  head.on('press', ({ frame: n, waitedFor }) => told.push(`press ${n} for ${String(waitedFor)}`));
  head.on('press-failed', ({ fault, waitedFor }) => told.push(`${fault.kind} for ${String(waitedFor)}`));
  head.on('press-set-aside', ({ waitedFor }) => told.push(`set aside for ${String(waitedFor)}`));
  return told;
}

async function played(protocol: string, pairs: readonly Pair[], use: (play: Play) => Promise<void>) {
  const { path, finish } = await transcript([...plainHead(protocol), ...pairs, DISARM]);
  const clock = new HeldClock();
  const head = await connectHead(new SerialTransport(path), clock, { heartbeatMs: 60_000 });
  clock.hold();
  const told = listen(head);
  const due = async (ms: number): Promise<void> => {
    await expect.poll(() => clock.due(ms), { timeout: 20_000 }).toBeGreaterThan(0);
  };
  try {
    await use({ head, told, due });
    await head.disarmButton(); // behind whatever is under way
  } finally {
    await head.close();
  }
  expect(await finish()).toEqual({ unused: [], unexpected: [] });
}

describe('arming the button for B while a head that counts its presses waits for A', () => {
  const armedForA: readonly Pair[] = [ARM, [WAIT, '7;3;0,"No error"']];

  it('a press just before, not noticed yet, is set aside: it counts for neither', () =>
    played('1.1', [...armedForA, [WAIT, '8;4;0,"No error"'], [STATE, '32']], async ({ head, told, due }) => {
      await head.armButton('A');
      await head.armButton('B');
      expect(told).toEqual(['set aside for A']);
      await due(POLL_MS);
    }));

  it('a press in the very message is set aside, though it took no frame', () =>
    played('1.1', [...armedForA, [WAIT, '7;4;0,"No error"'], [STATE, '32']], async ({ head, told, due }) => {
      await head.armButton('A');
      await head.armButton('B');
      expect(told).toEqual(['set aside for A']);
      await due(POLL_MS);
    }));

  it('a press just after counts for B', () =>
    played(
      '1.1',
      [...armedForA, [WAIT, '7;3;0,"No error"'], [STATE, '0'], ['FETC?', frame(8)]],
      async ({ head, told, due }) => {
        await head.armButton('A');
        await head.armButton('B');
        await due(POLL_MS);
        await expect.poll(() => told).toEqual(['press 8 for B']);
      },
    ));

  it('a press noticed before counts for A, even where B is asked for while it is fetched', () =>
    played(
      '1.1',
      [...armedForA, [STATE, '0'], ['FETC?', frame(8)], [WAIT, '8;4;0,"No error"']],
      async ({ head, told, due }) => {
        await head.armButton('A');
        await due(POLL_MS);
        await head.armButton('B');
        expect(told).toEqual(['press 8 for A']);
      },
    ));

  it('a press before a damaged answer is set aside once the line is proved', () =>
    played(
      '1.1',
      [
        ...armedForA,
        [WAIT, '8;4;0,"No'],
        ['', null],
        ['*OPC?', '1'],
        ['*CLS', null],
        [WAIT, '8;4;0,"No error"'],
      ],
      async ({ head, told, due }) => {
        await head.armButton('A');
        const armed = head.armButton('B');
        await due(RESYNC_MS);
        await armed;
        expect(told).toEqual(['set aside for A']);
      },
    ));

  it('a frame that is not the one the press took is no reading', () =>
    played(
      '1.1',
      [
        ...armedForA,
        [STATE, '0'],
        ['FETC?', frame(9)],
        ['', null],
        ['*OPC?', '1'],
        ['*CLS', null],
        ['FETC?', frame(9)],
        ['SYST:ERR?', '0,"No error"'],
      ],
      async ({ head, told, due }) => {
        await head.armButton('A');
        await due(POLL_MS);
        await due(RESYNC_MS);
        await expect.poll(() => told).toEqual(['sequence for A']);
      },
    ));

  it('armed for the same again, nothing is said on the wire', () =>
    played('1.1', armedForA, async ({ head, told }) => {
      await head.armButton('A');
      await head.armButton('A');
      expect(told).toEqual([]);
    }));
});

describe('a head that does not count its presses (protocol 1.0)', () => {
  const armedForA: readonly Pair[] = [ARM, ['ABOR;:SENS:FRAM?', '7'], [WAIT_UNCOUNTED, '7;0,"No error"']];

  it('is left alone until its contacts have settled; a press before is set aside by its frame', () =>
    played(
      '1.0',
      [...armedForA, ['ABOR;:SENS:FRAM?', '8'], [WAIT_UNCOUNTED, '8;0,"No error"'], [STATE, '32']],
      async ({ head, told, due }) => {
        const first = head.armButton('A');
        await due(QUIET_MS);
        await first;
        const second = head.armButton('B');
        await due(QUIET_MS);
        await second;
        expect(told).toEqual(['set aside for A']);
        await due(POLL_MS);
      },
    ));

  it('a press just after counts for B', () =>
    played(
      '1.0',
      [
        ...armedForA,
        ['ABOR;:SENS:FRAM?', '7'],
        [WAIT_UNCOUNTED, '7;0,"No error"'],
        [STATE, '0'],
        ['FETC?', frame(8)],
      ],
      async ({ head, told, due }) => {
        const first = head.armButton('A');
        await due(QUIET_MS);
        await first;
        const second = head.armButton('B');
        await due(QUIET_MS);
        await second;
        await due(POLL_MS);
        await expect.poll(() => told).toEqual(['press 8 for B']);
      },
    ));
});

describe.each(['1.1', '1.0'])('a head of protocol %s, armed anew as fast as it goes', (protocol) => {
  it('never takes a press for what it was armed for afterwards, nor for what it was armed for before', async () => {
    const terminal = await simulatedHead('--protocol', protocol);
    const head = await connectHead(new SerialTransport(terminal.path), systemClock);
    const told = listen(head);
    try {
      await head.armButton(0);
      for (let n = 1; n <= 5; n++) {
        await terminal.command('press'); // over, noticed or not
        await head.armButton(n);
        expect(told.splice(0)).toEqual([
          expect.stringMatching(new RegExp(`^(set aside|press \\d+) for ${n - 1}$`)),
        ]);
        await terminal.command('press');
        await expect
          .poll(() => told.splice(0), { timeout: 20_000 })
          .toEqual([expect.stringMatching(new RegExp(`^press \\d+ for ${n}$`))]);
        await head.armButton(n); // waits again
      }
    } finally {
      await head.close();
      await terminal.stop();
    }
  }, 60_000);
});
