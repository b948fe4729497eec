import type { Word } from '../../src/sentence/words.ts';
import { say } from '../api/sentences/bench.ts';

/**
 * Cautions by Colour Index generic name. What each name contains is common knowledge of the trade, written from
 * memory and without a source; the safety data sheet of the tube in hand decides.
 */
const HAZARDS: readonly { readonly what: Word; readonly codes: ReadonlySet<string> }[] = [
  { what: 'cadmium', codes: new Set(['PY35', 'PY37', 'PO20', 'PO23', 'PR108', 'PR113']) },
  {
    what: 'cobalt',
    codes: new Set(['PB28', 'PB35', 'PB36', 'PB74', 'PG19', 'PG26', 'PG50', 'PV14', 'PV49', 'PY40']),
  },
  { what: 'lead', codes: new Set(['PW1', 'PY34', 'PY41', 'PR103', 'PR104', 'PR105', 'PO21']) },
  { what: 'chromate', codes: new Set(['PY31', 'PY32', 'PY34', 'PY36', 'PR103', 'PR104', 'PO21']) },
  { what: 'chromium', codes: new Set(['PG17', 'PG18', 'PB36', 'PG26']) },
  { what: 'mercury', codes: new Set(['PR106', 'PR113', 'PO23']) },
  { what: 'arsenic', codes: new Set(['PG21', 'PG22', 'PY39', 'PV49']) },
  { what: 'nickel', codes: new Set(['PY53', 'PY157', 'PG50', 'PBk28']) },
  { what: 'antimony', codes: new Set(['PY41', 'PW11', 'PY53', 'PBr24']) },
  { what: 'manganese', codes: new Set(['PBr7', 'PBr8', 'PBk14', 'PBk26', 'PV16', 'PB33']) },
  { what: 'copper', codes: new Set(['PB30', 'PG20', 'PG21', 'PG22']) },
  { what: 'barium', codes: new Set(['PY31', 'PB33']) },
];

/** The cautions of a tube, each naming only the pigments it is about and deferring to data sheet and local rules. */
export function cautionsFor(pigments: readonly string[]): string[] {
  const found = pigments.flatMap((pigment) => {
    const plain = pigment.split(':')[0]!.trim().toUpperCase();
    const holds = HAZARDS.filter(({ codes }) => [...codes].some((code) => code.toUpperCase() === plain));
    return holds.length > 0 ? [{ pigment, words: holds.map(({ what }) => what).join(', ') }] : [];
  });
  if (found.length === 0) return [];
  const byWords = new Map<string, string[]>();
  for (const { pigment, words } of found) byWords.set(words, [...(byWords.get(words) ?? []), pigment]);
  return [...byWords].map(([words, named]) => say('caution', { pigments: named.join(', '), what: words }));
}
