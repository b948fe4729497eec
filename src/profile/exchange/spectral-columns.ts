import { type Assumption, ExchangeProblem, type ReadChoices } from './spectral-table.ts';
import { say } from './sentences.ts';

/** Spellings of one-column-per-wavelength names met in public files; the number is the wavelength in nm. */
const SPELLING =
  /^(?:SPECTRAL_?(?:NM|PCT|DEC)?_?|SPECTRUM_?|SPEC_?|NM_?|[RKS]_)?(\d{3,4}(?:\.\d+)?)(?:_?NM)?$/i;

/** The wavelength (nm) a column is named after, or undefined. */
export function wavelengthOfColumn(name: string): number | undefined {
  const found = SPELLING.exec(name.trim());
  if (!found) return undefined;
  const nm = Number(found[1]);
  return nm >= 300 && nm <= 1100 ? nm : undefined;
}

/** Whether a column's own name says its scale. */
export function scaleOfColumn(name: string): ReadChoices['scale'] {
  if (/PCT/i.test(name)) return 'per cent';
  if (/DEC/i.test(name)) return 'fraction';
  return undefined;
}

/**
 * The factor that takes spectral numbers to fractions. The column name decides, else the user's answer, else a number
 * over 1.5, which no paint's reflectance factor reaches as a fraction. A file of small numbers stays a question: a
 * very dark paint in per cent looks like a fraction.
 */
export function scaleToFraction(
  columnNames: readonly string[],
  largest: number,
  choices: ReadChoices,
  assumptions: Assumption[],
): number {
  const named = columnNames.map(scaleOfColumn).find((s) => s !== undefined);
  if (choices.scale) return choices.scale === 'per cent' ? 0.01 : 1;
  if (named) return named === 'per cent' ? 0.01 : 1;
  if (largest > 1.5) {
    assumptions.push({
      choice: 'scale',
      sentence: say('read-as-per-cent', { largest }),
    });
    return 0.01;
  }
  if (largest > 0.2) {
    assumptions.push({
      choice: 'scale',
      sentence: say('read-as-fractions', { largest }),
    });
    return 1;
  }
  throw new ExchangeProblem(say('which-scale', { largest }), 'scale');
}

/**
 * A number as people write it. A decimal comma is taken only where `decimalComma` says so.
 * @throws ExchangeProblem naming the place.
 */
export function numberFrom(text: string, where: string, decimalComma: boolean): number {
  const cleaned = decimalComma ? text.trim().replace(',', '.') : text.trim();
  const value = cleaned === '' ? Number.NaN : Number(cleaned);
  if (!Number.isFinite(value)) {
    throw new ExchangeProblem(say('not-a-number', { text: text.slice(0, 40), where }));
  }
  return value;
}

/** Orders a curve by wavelength and refuses the same wavelength twice. */
export function ascending(
  points: readonly { nm: number; value: number }[],
  where: string,
): { wavelengthsNm: number[]; values: number[] } {
  const sorted = [...points].sort((p, q) => p.nm - q.nm);
  for (let i = 1; i < sorted.length; i++) {
    if (sorted[i]!.nm === sorted[i - 1]!.nm) {
      throw new ExchangeProblem(say('twice', { where, nm: sorted[i]!.nm }));
    }
  }
  return { wavelengthsNm: sorted.map((p) => p.nm), values: sorted.map((p) => p.value) };
}
