import type { Db } from './open-store.ts';

export interface PhoneRow {
  readonly id: string;
  readonly token_hash: Buffer;
  readonly paired_at: string;
  readonly expires_at: string;
}

export function addPhone(db: Db, phone: PhoneRow): void {
  db.prepare('insert into paired_phone (id, token_hash, paired_at, expires_at) values (?, ?, ?, ?)').run(
    phone.id,
    phone.token_hash,
    phone.paired_at,
    phone.expires_at,
  );
}

/** Phones whose pairing still holds at `now` (ISO 8601), oldest first. */
export function phonesAt(db: Db, now: string): PhoneRow[] {
  return db
    .prepare<[string], PhoneRow>('select * from paired_phone where expires_at > ? order by paired_at, rowid')
    .all(now);
}

/** @returns whether there was such a phone */
export function deletePhone(db: Db, id: string): boolean {
  return db.prepare('delete from paired_phone where id = ?').run(id).changes > 0;
}

/** Found by the hash of its token: the index looks up a hash, so its timing tells nothing of a token. */
export function phoneByHash(db: Db, hash: Buffer, now: string): PhoneRow | undefined {
  return db
    .prepare<[Buffer, string], PhoneRow>('select * from paired_phone where token_hash = ? and expires_at > ?')
    .get(hash, now);
}
