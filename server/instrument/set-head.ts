/** The steps that set a head: dark, white tile, black trap, check tile. Each is asked of a head that is free. */
import { WHITE_BRACKET_LIMIT } from '../../src/calibrate/limits.ts';
import { perCent } from '../../src/calibrate/per-cent.ts';
import { whiteLevel } from '../../src/calibrate/reading/white-level.ts';
import type { Db } from '../store/open-store.ts';
import { conflict } from '../problem.ts';
import type { InstrumentOptions } from './bench-reading.ts';
import { judgeTile } from './check-tile.ts';
import { expose, type TakenExposure } from './exposures.ts';
import type { HeadSession } from './head-session.ts';
import { tileValues } from './tile-values.ts';
import type { ClosedBlock } from './white-blocks.ts';
import { say } from '../api/sentences/instrument.ts';

export type SetOptions = Pick<InstrumentOptions, 'clock' | 'now' | 'tiles' | 'blocks' | 'judged'> & {
  readonly db: Db;
};

const WHITE_EXPOSURES = 4;
const DARK_LIMIT = 0.02;

/** Dark by itself says only that the head is dark; every reading takes its own as well. */
export async function setDark(session: HeadSession, { now }: SetOptions): Promise<void> {
  const { head, channels } = session;
  const dark = await head.readDark();
  const share = Math.max(...channels.map((i) => dark.counts[i]!)) / head.settings.fullScale;
  const good = share < DARK_LIMIT;
  session.setStep(
    'dark',
    good ? 'good' : 'refused',
    good
      ? say('dark-good', { percent: (100 * share).toFixed(2) })
      : say('dark-bad', { percent: (100 * share).toFixed(1) }),
    now(),
  );
}

/** @param tile reflectance of the tile: one number, one per channel, or the one chosen for this head */
export async function setWhite(
  session: HeadSession,
  options: SetOptions,
  tile: number | readonly number[] | undefined,
): Promise<void> {
  const { head, scale } = session;
  const values = tileValues(session, options.db, tile);
  const exposures: TakenExposure[] = [];
  const times: number[] = [];
  for (let n = 0; n < WHITE_EXPOSURES; n += 1) {
    // Afresh each time: one tilted placing is not to stand for the white.
    session.practice?.place({ kind: 'white-tile' });
    exposures.push(await expose(head, session.channels));
    times.push(options.clock.now());
  }
  session.kelvin = exposures.at(-1)!.light.kelvin;
  const frames = exposures.map((e) => e.exposure);
  const signal = scale.takeWhite(frames, times, values.reflectance, session.kelvin);
  const { block, finding, judged, closed } = options.blocks.take(session.name, {
    signal: [...signal],
    atMs: Date.parse(options.now()),
    gain: scale.gain,
    apertureS: head.settings.apertureS,
    channels: session.channelNames,
  });
  session.block = block;
  session.tile = values;
  session.tileKnown = values.known;
  const level = whiteLevel(frames.at(-1)!.light, scale.head, head.limits.gains);
  const faint = level.state === 'good' ? undefined : level.sentence;
  session.note =
    finding ?? values.note ?? (faint ? { level: 'note', code: 'white-level', sentence: faint } : undefined);
  if (judged) options.judged();
  const read = say('white-read', { times: WHITE_EXPOSURES, percent: Math.round(level.share * 100) });
  session.setStep('white tile', 'good', closed ? closingSentence(read, closed) : read, options.now());
}

function closingSentence(read: string, { change, readings }: ClosedBlock): string {
  return say('white-closes', {
    read,
    by: perCent(change),
    allowed: perCent(WHITE_BRACKET_LIMIT),
    many: `${readings} ${readings === 1 ? 'reading' : 'readings'}`,
    are: readings === 1 ? 'is' : 'are',
  });
}

/** One more look at the white while the lamp warms up; nothing is set. */
export async function watchWhite(session: HeadSession, { clock }: SetOptions): Promise<void> {
  if (session.practice && session.practice.surface.kind !== 'white-tile')
    session.practice.place({ kind: 'white-tile' });
  const { exposure, light } = await expose(session.head, session.channels);
  session.kelvin = light.kelvin;
  session.scale.watchWhite(exposure, clock.now());
}

export async function setTrap(session: HeadSession, { now }: SetOptions): Promise<void> {
  session.practice?.place({ kind: 'black-trap' });
  const { exposure } = await expose(session.head, session.channels);
  session.scale.takeTrap(exposure);
  session.setStep('black trap', 'good', say('trap-read'), now());
}

export async function setCheckTile(session: HeadSession, { tiles, now }: SetOptions): Promise<void> {
  const reflectance = await readTile(session, 'check tile', { kind: 'check-tile' });
  const verdict = judgeTile(tiles, session.name, session.channelNames, reflectance);
  session.setStep('check tile', verdict.good ? 'good' : 'refused', verdict.sentence, now());
}

/** Reflectance of a tile that is no white of this scale. @throws HttpProblem before the white is read */
export async function readTile(
  session: HeadSession,
  what: string,
  place: Parameters<NonNullable<HeadSession['practice']>['place']>[0],
): Promise<Float64Array> {
  if (!session.scale.hasWhite) throw conflict(say('white-before', { what }));
  session.practice?.place(place);
  const { exposure } = await expose(session.head, session.channels);
  return session.scale.calibrate(exposure).reflectance!;
}
