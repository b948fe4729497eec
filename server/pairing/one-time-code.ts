import { createHash, randomInt, timingSafeEqual } from 'node:crypto';

/** Letters and figures that no hand or eye takes for another: no 0 O, 1 I L, 2 Z, 5 S, 8 B, U V as one. */
export const CODE_ALPHABET = '34679ACDEFGHJKMNPQRTVWXY';
export const CODE_LENGTH = 8;
/** Milliseconds. */
export const CODE_LASTS = 5 * 60_000;
export const CODE_TRIES = 5;

export type CodeOutcome = 'right' | 'wrong' | 'spent' | 'expired' | 'none';

/**
 * One code at a time, in memory alone: it lasts five minutes, opens once, and dies of five wrong tries. 24^8 codes
 * (about 1.1e11) against five tries: guessing it is hopeless, so no address is counted or blocked.
 */
export class OneTimeCode {
  #code: string | undefined;
  #expiresAt = 0;
  #wrong = 0;
  readonly #now: () => number;

  /** @param now milliseconds since 1970 */
  constructor(now: () => number) {
    this.#now = now;
  }

  /** A new code; the one before it is worth nothing from now on. */
  renew(): void {
    this.#code = Array.from(
      { length: CODE_LENGTH },
      () => CODE_ALPHABET[randomInt(CODE_ALPHABET.length)],
    ).join('');
    this.#expiresAt = this.#now() + CODE_LASTS;
    this.#wrong = 0;
  }

  end(): void {
    this.#code = undefined;
    this.#wrong = 0;
  }

  /** What the computer shows, while it is worth something. */
  get shown(): { code: string; expiresAt: number; triesLeft: number } | undefined {
    if (this.#code === undefined || this.#now() >= this.#expiresAt || this.#wrong >= CODE_TRIES)
      return undefined;
    return { code: this.#code, expiresAt: this.#expiresAt, triesLeft: CODE_TRIES - this.#wrong };
  }

  /** Tries what a phone sent; spaces, dashes and small letters are as good. A right code is used up by it. */
  tried(text: string): CodeOutcome {
    if (this.#code === undefined) return 'none';
    if (this.#wrong >= CODE_TRIES) return 'spent';
    if (this.#now() >= this.#expiresAt) return 'expired';
    const right = sameText(text.replace(/[\s-]/g, '').toUpperCase(), this.#code);
    if (right) {
      this.end();
      return 'right';
    }
    this.#wrong += 1;
    return this.#wrong >= CODE_TRIES ? 'spent' : 'wrong';
  }
}

/** Compared by digest, so that neither length nor first difference shows in the time it takes. */
function sameText(a: string, b: string): boolean {
  const digest = (text: string): Buffer => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(a), digest(b));
}
