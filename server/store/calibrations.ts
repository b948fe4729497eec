import type { Db } from './open-store.ts';

export type CalibrationStep = 'dark' | 'white tile' | 'black trap' | 'check tile';

export interface CalibrationRow {
  readonly seq: number;
  readonly instrument: string;
  readonly step: CalibrationStep;
  readonly body: string;
  readonly at: string;
}

/** Keeps what an instrument was set on; `instrument` is its identity, so that two heads are never mixed. */
export function addCalibration(
  db: Db,
  instrument: string,
  step: CalibrationStep,
  body: unknown,
  at: string,
): void {
  db.prepare('insert into calibration (instrument, step, body, at) values (?, ?, ?, ?)').run(
    instrument,
    step,
    JSON.stringify(body),
    at,
  );
}

export function calibrationsOf(db: Db, instrument: string, step: CalibrationStep): CalibrationRow[] {
  return db
    .prepare<[string, string], CalibrationRow>(
      'select * from calibration where instrument = ? and step = ? order by seq',
    )
    .all(instrument, step);
}
