/** What the bench found, in the painter's language. */
import type { Finding } from '../../../server/api/words.ts';
import { settings } from '../state/settings.ts';
import { said } from './said.ts';

/** Said otherwise on the page than by the bench, in either language: a reading that counts is said to count. */
const SETTLING = {
  en: 'It counts. The lamp was still warming up, so should other readings disagree with it, read here again.',
  de: 'Sie gilt. Die Lampe wurde noch warm; weichen andere Messungen ab, messen Sie hier noch einmal.',
};

/** A finding in the language of the page. `kept`: it is about a reading that was kept for its rung. */
export function findingSays(finding: Pick<Finding, 'code' | 'sentence'>, kept = false): string {
  if (finding.code === 'settling' && kept) return SETTLING[settings().language];
  return said(finding.sentence);
}

/** A sentence of the bench, and a tube's trust line; one that another program wrote stays as it is. */
export { said as benchSays, said as trustSays };
