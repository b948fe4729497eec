import { createHash, randomBytes } from 'node:crypto';
import type { Response } from 'express';
import { newId } from '../store/ids.ts';
import type { Db } from '../store/open-store.ts';
import { addPhone, deletePhone, phoneByHash, phonesAt, type PhoneRow } from '../store/paired-phones.ts';
import { HttpProblem } from '../problem.ts';
import { type CodeOutcome, OneTimeCode } from './one-time-code.ts';
import { say } from '../api/sentences/bench.ts';

/** Days until a phone must be paired again. */
export const PAIRED_DAYS = 30;

const REFUSALS: Readonly<Record<Exclude<CodeOutcome, 'right'>, string>> = {
  wrong: say('wrong-code'),
  spent: say('five-tries'),
  expired: say('code-over'),
  none: say('no-code'),
};

/** Which phones may come in, and how one becomes one of them. */
export class Pairing {
  readonly code: OneTimeCode;
  /** Where phones reach the bench, once it listens: `http://192.168.1.20:4747`. */
  address = '';
  readonly #db: Db;
  readonly #now: () => number;
  readonly #comesOrGoes: () => void;
  readonly #open = new Map<string, Set<Response>>();
  readonly #listening = new Map<string, Set<Response>>();

  /**
   * @param now milliseconds since 1970
   * @param comesOrGoes called when a phone opens the bench or leaves it
   */
  constructor(db: Db, now: () => number, comesOrGoes: () => void) {
    this.#db = db;
    this.#now = now;
    this.#comesOrGoes = comesOrGoes;
    this.code = new OneTimeCode(now);
  }

  /**
   * A phone for a code.
   * @returns its token: 32 random bytes as base64url, for its cookie and for nothing else
   * @throws HttpProblem 403 when the code is wrong, spent, expired or not there
   */
  pair(text: string): string {
    const outcome = this.code.tried(text);
    if (outcome !== 'right') throw new HttpProblem(403, REFUSALS[outcome]);
    const token = randomBytes(32);
    addPhone(this.#db, {
      id: newId('phone'),
      token_hash: hashed(token),
      paired_at: iso(this.#now()),
      expires_at: iso(this.#now() + PAIRED_DAYS * 86_400_000),
    });
    return token.toString('base64url');
  }

  /** The phone a token belongs to, if it is still paired. */
  phoneOf(token: string): PhoneRow | undefined {
    const bytes = Buffer.from(token, 'base64url');
    if (bytes.length !== 32) return undefined;
    return phoneByHash(this.#db, hashed(bytes), iso(this.#now()));
  }

  phones(): { id: string; pairedAt: string; expiresAt: string; here: boolean }[] {
    return phonesAt(this.#db, iso(this.#now())).map((row) => ({
      id: row.id,
      pairedAt: row.paired_at,
      expiresAt: row.expires_at,
      here: (this.#listening.get(row.id)?.size ?? 0) > 0,
    }));
  }

  /** Remembers an answer under way, so that letting go of the phone ends it: live events last for hours. */
  answering(phoneId: string, res: Response): void {
    remember(this.#open, phoneId, res);
  }

  /** A phone that takes live events is at the bench until their connection closes. */
  listening(phoneId: string, res: Response): void {
    remember(this.#listening, phoneId, res);
    res.on('close', this.#comesOrGoes);
    this.#comesOrGoes();
  }

  /** @throws HttpProblem 404 */
  letGo(phoneId: string): void {
    if (!deletePhone(this.#db, phoneId)) {
      throw new HttpProblem(404, say('no-phone', { id: phoneId }));
    }
    for (const res of this.#open.get(phoneId) ?? []) res.destroy();
    this.#open.delete(phoneId);
  }
}

/** Keeps an answer by its phone until its connection closes. */
function remember(answers: Map<string, Set<Response>>, phoneId: string, res: Response): void {
  const own = answers.get(phoneId) ?? new Set();
  answers.set(phoneId, own.add(res));
  res.on('close', () => own.delete(res));
}

const hashed = (token: Buffer): Buffer => createHash('sha256').update(token).digest();
const iso = (ms: number): string => new Date(ms).toISOString();
