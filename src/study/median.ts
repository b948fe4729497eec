/** Middle of some numbers; the mean of the two in the middle for an even count. NaN for none. */
export function median(numbers: ArrayLike<number>): number {
  const sorted = Float64Array.from(numbers).sort();
  const n = sorted.length;
  if (n === 0) return Number.NaN;
  return n % 2 ? sorted[(n - 1) / 2]! : (sorted[n / 2 - 1]! + sorted[n / 2]!) / 2;
}
