import type { HeadTest } from '../../src/calibrate/linearity/superposition.ts';
import type { Db } from './open-store.ts';

export type HeadTestName = 'aperture' | 'gain' | 'superposition' | 'lift' | 'light leak';

export interface HeadTestRow {
  readonly test: HeadTestName;
  readonly passed: number;
  readonly body: string;
  readonly at: string;
}

/** A measured step of gain as it is kept. */
export interface KeptGainStep {
  readonly fromGain: number;
  readonly toGain: number;
  readonly channels: readonly string[];
  /** Basic counts at `toGain` over those at `fromGain`, per channel. */
  readonly ratios: readonly number[];
}

/** Keeps the outcome of a test; `more` is what a later calculation needs of it. */
export function addHeadTest(
  db: Db,
  instrument: string,
  test: HeadTestName,
  { passed, worst, channel, sentence }: HeadTest,
  more: Partial<KeptGainStep>,
  at: string,
): void {
  const body = JSON.stringify({ worst, channel, sentence, ...more });
  db.prepare('insert into head_test (instrument, test, passed, body, at) values (?, ?, ?, ?, ?)').run(
    instrument,
    test,
    passed ? 1 : 0,
    body,
    at,
  );
}

/** The newest outcome of each test of a head. */
export function newestHeadTests(db: Db, instrument: string): HeadTestRow[] {
  return db
    .prepare<[string], HeadTestRow>(
      `select test, passed, body, at from head_test
       where seq in (select max(seq) from head_test where instrument = ? group by test) order by test`,
    )
    .all(instrument);
}

/** The newest passed measurement of each step of gain of a head, with when it was made. */
export function gainStepsOf(db: Db, instrument: string): (KeptGainStep & { readonly at: string })[] {
  const rows = db
    .prepare<[string], HeadTestRow>(
      `select test, passed, body, at from head_test
       where instrument = ? and test = 'gain' and passed = 1 order by seq`,
    )
    .all(instrument);
  const newest = new Map<string, KeptGainStep & { readonly at: string }>();
  for (const { body, at } of rows) {
    const { fromGain, toGain, channels, ratios } = JSON.parse(body) as KeptGainStep;
    newest.set(`${fromGain} ${toGain}`, { fromGain, toGain, channels, ratios, at });
  }
  return [...newest.values()].toSorted((a, b) => b.fromGain - a.fromGain);
}
