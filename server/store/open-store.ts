import Database from 'better-sqlite3';
import { migrate } from './migrate.ts';
import { say } from '../api/sentences/bench.ts';

export type Db = Database.Database;

/** The store cannot be opened or used; one sentence. */
export class StoreProblem extends Error {
  override readonly name = 'StoreProblem';
}

/**
 * Opens the store, or makes it. WAL with synchronous FULL is set and read back at every open: the driver is compiled
 * to open existing WAL files at NORMAL, where an acknowledged reading can be lost to a power cut.
 * @throws StoreProblem when the file is no store, is newer than this program, or cannot be made safe.
 */
export function openStore(file: string): Db {
  let db: Db;
  try {
    db = new Database(file);
  } catch (error) {
    throw new StoreProblem(say('store-not-opened', { file, cause: (error as Error).message }));
  }
  try {
    db.pragma('busy_timeout = 2000');
    db.pragma('journal_mode = wal');
    db.pragma('synchronous = full');
    db.pragma('foreign_keys = on');
    // Without it "insert or replace" deletes a row past its trigger.
    db.pragma('recursive_triggers = on');
    assertDurable(db, file);
    migrate(db);
    return db;
  } catch (error) {
    db.close();
    if (error instanceof StoreProblem) throw error;
    throw new StoreProblem(say('store-not-used', { file, cause: (error as Error).message }));
  }
}

/** @throws StoreProblem unless the connection is in WAL mode with synchronous FULL. */
export function assertDurable(db: Db, file = db.name): void {
  const mode = String(db.pragma('journal_mode', { simple: true }));
  const synchronous = Number(db.pragma('synchronous', { simple: true }));
  // ":memory:" has no journal file; it is used by tests alone.
  const wal = mode === 'wal' || file === ':memory:';
  if (!wal || synchronous !== 2) {
    throw new StoreProblem(say('store-mode', { file, mode, synchronous }));
  }
}

/** A copy of the whole store by SQLite's own backup call, whole even while readings come in. */
export async function backUp(db: Db, file: string): Promise<void> {
  await db.backup(file);
}
