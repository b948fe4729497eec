import type { MixingPalette } from '../palette.ts';

/** Parts of white in a hundred of the mixtures asked about: none, so that darks are among them, to a pale tint. */
const WHITE_SHARES = [0, 0.3, 0.6, 0.85];
/** Steps of the golden ratio fill 0..1 evenly however many are taken (H. Weyl, Math. Ann. 77 (1916) 313-352). */
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Mixtures that hold one tube, as masses that sum to 1: with each other tube in turn, from a little of it to nearly all,
 * with and without white. The same for the same palette, always; with no other tube, its tints.
 */
export function mixturesOfTube(palette: MixingPalette, id: string, count = 32): Record<string, number>[] {
  const partners = palette.tubes.map((t) => t.id).filter((t) => t !== id && t !== palette.white);
  return Array.from({ length: count }, (_, i) => {
    const along = ((i + 1) * GOLDEN) % 1;
    if (partners.length === 0)
      return id === palette.white ? { [id]: 1 } : { [id]: along, [palette.white]: 1 - along };
    const white = WHITE_SHARES[i % WHITE_SHARES.length]!;
    const partner = partners[Math.floor(i / WHITE_SHARES.length) % partners.length]!;
    if (id === palette.white) return { [id]: Math.max(0.1, white), [partner]: 1 - Math.max(0.1, white) };
    const own = 0.1 + 0.8 * along;
    return {
      [id]: own * (1 - white),
      [partner]: (1 - own) * (1 - white),
      ...(white > 0 ? { [palette.white]: white } : {}),
    };
  });
}
