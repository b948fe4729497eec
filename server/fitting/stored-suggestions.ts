import type { TubeFitAnswer } from '../api/fits.ts';
import type { Suggestion } from './suggestions.ts';

/** Advice of a stored fit. One stored by an earlier version of this program holds plain sentences. */
export function suggestionsOf(tube: Pick<TubeFitAnswer, 'suggestions'>): Suggestion[] {
  return (tube.suggestions as readonly (string | Suggestion)[]).map((s) =>
    typeof s === 'string' ? { rungId: null, sentence: s, gain: null, next: null } : s,
  );
}
