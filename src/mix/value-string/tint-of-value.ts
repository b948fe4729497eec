import type { Search } from '../search/come-down.ts';

/** Ratios looked at before halving, in ln of effective parts. */
const LOOKS = 80;
const WIDEST = 14;
const HALVINGS = 60;

/**
 * Effective share (0..1) of the first of two tubes at which their mix has a given L* under C/2deg; undefined where
 * none has. Where several have (a yellow that is lighter let down a little), the one with most of the first tube.
 */
export function shareOfValue(search: Search, one: number, two: number, valueL: number): number | undefined {
  const { kernel } = search;
  kernel.choose([one, two]);
  const off = (share: number): number => {
    kernel.colour(Float64Array.of(share, 1 - share));
    return kernel.u[3]! - valueL;
  };
  const shareAt = (k: number): number =>
    k === 0 ? 1 : k === LOOKS ? 0 : 1 / (1 + Math.exp(-WIDEST / 2 + (WIDEST * k) / LOOKS));
  let before = off(1);
  if (Math.abs(before) < 1e-9) return 1;
  for (let k = 1; k <= LOOKS; k++) {
    const here = off(shareAt(k));
    if (Math.abs(here) < 1e-9) return shareAt(k);
    if (before * here < 0) {
      let [high, low] = [shareAt(k - 1), shareAt(k)];
      for (let i = 0; i < HALVINGS; i++) {
        const middle = (high + low) / 2;
        if (off(middle) * before > 0) high = middle;
        else low = middle;
      }
      return (high + low) / 2;
    }
    before = here;
  }
  return undefined;
}
