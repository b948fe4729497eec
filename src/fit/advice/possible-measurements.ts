import type { SwatchSet } from '../../calibrate/swatch-set/schema.ts';
import type { PaletteFit } from '../palette-fit.ts';
import type { Measurement } from './measurement.ts';

/** Spots read on a film, as a ladder has them. */
const SPOTS = 3;
/** Parts of white to one of paint of the tints that may be missing. */
const TINTS = [1, 4, 16, 64];
/** Grams in a pile of the measurement, where the scale's step is what counts. */
const PILE = 4;
/** Tubes a check mixture is thought of with: those most in doubt, for it tells of both. */
const PARTNERS = 4;
/** Two ratios closer than this, in ln, are one tint. */
const SAME_TINT = 0.35;

/** What could be read next of a tube: the masstone again or anew, a tint that is missing, one mixture with another tube. */
export function possibleMeasurements(fit: PaletteFit, set: SwatchSet, id: string): Measurement[] {
  const { white, tubes } = fit.palette;
  const masstone = { [id]: PILE };
  const read = fit.swatches.find((s) => s.masses[id] === 1 && s.film === 'opaque');
  const before = read ? (set.swatches.find((s) => s.id === read.id)?.readings.length ?? 0) : 0;
  const found: Measurement[] = [];
  if (before > 0) found.push({ kind: 'repeat', masses: masstone, before, readings: SPOTS });
  found.push({ kind: 'drawdown', masses: masstone, before: 0, readings: SPOTS });
  if (id === white) return found;
  const ratios = fit.swatches.flatMap(({ masses }) => {
    const [own, other] = [masses[id] ?? 0, masses[white] ?? 0];
    return own > 0 && other > 0 && own + other > 1 - 1e-6 ? [other / own] : [];
  });
  for (const parts of TINTS) {
    if (ratios.some((r) => Math.abs(Math.log(r / parts)) < SAME_TINT)) continue;
    found.push({
      kind: 'tint',
      masses: { [id]: PILE / (1 + parts), [white]: (PILE * parts) / (1 + parts) },
      before: 0,
      readings: SPOTS,
    });
  }
  const partners = tubes
    .filter((t) => t.id !== id && t.id !== white)
    .map((t) => ({ id: t.id, doubt: t.own.reduce((sum, c) => sum + c.reduce((a, v) => a + v * v, 0), 0) }))
    .toSorted((a, b) => b.doubt - a.doubt);
  for (const { id: other } of partners.slice(0, PARTNERS)) {
    found.push({ kind: 'check', masses: { [id]: PILE / 2, [other]: PILE / 2 }, before: 0, readings: SPOTS });
  }
  return found;
}
