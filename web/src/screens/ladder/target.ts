/** What the next press would read: the server's next step, or the rung the painter chose to do again. */
import type { Ladder, Rung } from '../../../../server/api/ladders.ts';
import type { Reading } from '../../../../server/api/readings.ts';
import { ladderWords } from '../../text/ladder.ts';

export type Over = Reading['over'];
export type Target =
  | { readonly kind: 'rung'; readonly rung: Rung; readonly over: Over }
  | { readonly kind: 'card'; readonly side: 'black' | 'white' };

/** The word for a rung in the language in use. Ratios are the same in every language. */
export function rungName(rung: Pick<Rung, 'name' | 'whiteParts'>): string {
  return rung.whiteParts === 0 ? ladderWords().masstone : rung.name;
}

function openOver(rung: Rung): Over {
  return (rung.need.find((n) => n.kept < n.wanted) ?? rung.need[0])?.over ?? 'opaque';
}

/** Undefined when the next thing to do is not a reading. */
export function targetOf(ladder: Ladder, chosenId: string | undefined): Target | undefined {
  const chosen = ladder.rungs.find((r) => r.id === chosenId);
  if (chosen) return { kind: 'rung', rung: chosen, over: openOver(chosen) };
  const { next } = ladder;
  if (next.action === 'card' && next.over !== null && next.over !== 'opaque') {
    return { kind: 'card', side: next.over };
  }
  if (next.action === 'weigh' || next.action === 'fit' || next.action === 'done') return undefined;
  // Without a head, and while it is being set, the rung that waits can still be typed in.
  const rung = ladder.rungs.find((r) => r.id === next.rungId) ?? ladder.rungs.find((r) => !r.done);
  if (!rung) return undefined;
  return { kind: 'rung', rung, over: next.over ?? openOver(rung) };
}

/** What the target is called, for buttons: "1:4", "1:4 over black", "bare card, black half". */
export function targetName(target: Target): string {
  const t = ladderWords();
  if (target.kind === 'card') return `${t.over.opaque} ${t.over[target.side]}`;
  const name = rungName(target.rung);
  return target.over === 'opaque' ? name : `${name} · ${t.over[target.over]}`;
}

/** How full the target is: kept of wanted. */
export function fullness(target: Target, ladder: Ladder): { readonly kept: number; readonly wanted: number } {
  if (target.kind === 'card') {
    const side = ladder.cards?.[target.side] ?? [];
    return { kept: side.filter((r) => r.state === 'kept').length, wanted: Math.max(1, side.length) };
  }
  const need = target.rung.need.find((n) => n.over === target.over);
  return { kept: need?.kept ?? 0, wanted: need?.wanted ?? 1 };
}
