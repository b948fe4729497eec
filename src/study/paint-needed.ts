import type { Amount } from './amounts.ts';

/** Grams of each tube for a whole study, most first. */
export function paintNeeded(amounts: readonly Amount[]): { readonly id: string; readonly grams: number }[] {
  const sum = new Map<string, number>();
  for (const { grams } of amounts) {
    for (const [id, g] of Object.entries(grams)) sum.set(id, (sum.get(id) ?? 0) + g);
  }
  return [...sum].map(([id, grams]) => ({ id, grams })).sort((p, q) => q.grams - p.grams);
}
