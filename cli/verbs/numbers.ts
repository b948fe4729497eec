import { InvalidArgumentError } from 'commander';

/** Numbers as options take them; what is wrong with one is said in a sentence. */

export function real(text: string): number {
  const n = Number(text);
  if (text.trim() === '' || !Number.isFinite(n)) throw new InvalidArgumentError('Give a number.');
  return n;
}

export function positive(text: string): number {
  const n = real(text);
  if (n <= 0) throw new InvalidArgumentError('Give a number above zero.');
  return n;
}

export function whole(least: number, most: number): (text: string) => number {
  return (text) => {
    const n = real(text);
    if (!Number.isInteger(n) || n < least || n > most) {
      throw new InvalidArgumentError(`Give a whole number from ${least} to ${most}.`);
    }
    return n;
  };
}
