/** What the rack makes of its tubes: whose turn it is, and which share a pigment. */
import type { Tube } from '../../../../server/api/tubes.ts';

export type Turn =
  | { readonly kind: 'white' }
  | { readonly kind: 'tube' }
  | { readonly kind: 'go on'; readonly tube: Tube }
  | { readonly kind: 'fit'; readonly tube: Tube }
  | { readonly kind: 'measure'; readonly tube: Tube }
  | { readonly kind: 'mix' };

/** The one next step of the rack. Work begun comes before work not begun. */
export function turnOf(tubes: readonly Tube[]): Turn {
  const here = tubes.filter((t) => !t.putAway);
  if (!here.some((t) => t.role === 'white')) return { kind: 'white' };
  if (here.length < 2) return { kind: 'tube' };
  const at = (stage: Tube['known']['stage']): Tube | undefined => here.find((t) => t.known.stage === stage);
  const begun = at('ladder begun');
  if (begun) return { kind: 'go on', tube: begun };
  // The white is read first, by itself: every tint leans on it.
  const bare = here.find((t) => t.known.stage === 'not measured' && t.role === 'white') ?? at('not measured');
  const full = here.filter((t) => t.known.stage === 'ladder complete');
  const whiteIsFull = here.some((t) => t.role === 'white' && t.known.stage !== 'not measured');
  const colour = full.find((t) => t.role !== 'white');
  if (colour && whiteIsFull && !here.some((t) => t.known.stage === 'constants')) {
    return { kind: 'fit', tube: colour };
  }
  if (bare) return { kind: 'measure', tube: bare };
  if (colour) return { kind: 'fit', tube: colour };
  return { kind: 'mix' };
}

/** Tubes with the very same pigment codes, two or more to a group. */
export function samePigment(
  tubes: readonly Tube[],
): readonly { readonly codes: string; readonly tubes: readonly Tube[] }[] {
  const groups = new Map<string, Tube[]>();
  for (const tube of tubes) {
    if (tube.putAway || tube.pigments.length === 0) continue;
    const codes = tube.pigments
      .map((p) => p.toUpperCase())
      .toSorted()
      .join(' ');
    groups.set(codes, [...(groups.get(codes) ?? []), tube]);
  }
  return [...groups].filter(([, g]) => g.length > 1).map(([codes, g]) => ({ codes, tubes: g }));
}
