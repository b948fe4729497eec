import type { Db } from './open-store.ts';

export interface BlockVerdict {
  readonly accepted: boolean;
  /** Why it was sent back; empty where it was not. */
  readonly reason: string;
  /** Against the white between the two that enclose it. */
  readonly values: readonly number[] | undefined;
}

/** A reading whose closing white is still to come. */
export interface OpenBlockReading {
  readonly id: string;
  readonly raw: string;
}

export function addBlockVerdict(db: Db, readingId: string, verdict: BlockVerdict, at: string): void {
  const values = verdict.values ? JSON.stringify(verdict.values) : null;
  db.prepare(
    'insert into block_verdict (reading_id, accepted, reason, channel_values, at) values (?, ?, ?, ?, ?)',
  ).run(readingId, verdict.accepted ? 1 : 0, verdict.reason, values, at);
}

export function blockVerdictOf(db: Db, readingId: string): BlockVerdict | undefined {
  const row = db
    .prepare<[string], { accepted: number; reason: string; channel_values: string | null }>(
      'select * from block_verdict where reading_id = ? order by seq desc limit 1',
    )
    .get(readingId);
  if (!row) return undefined;
  const values = row.channel_values === null ? undefined : (JSON.parse(row.channel_values) as number[]);
  return { accepted: row.accepted === 1, reason: row.reason, values };
}

/** Readings of one instrument without a verdict, oldest first. */
export function openBlockReadings(db: Db, instrument: string): OpenBlockReading[] {
  return db
    .prepare<[string], OpenBlockReading>(
      `select id, raw from reading
       where source in ('head', 'practice') and json_extract(raw, '$.instrument') = ?
         and json_extract(raw, '$.block') is not null
         and not exists (select 1 from block_verdict where reading_id = reading.id)
       order by seq`,
    )
    .all(instrument);
}
