/** The words read from two metres, and the line beneath them. */
import type { Ladder, Rung } from '../../../../server/api/ladders.ts';
import { ladderWords } from '../../text/ladder.ts';
import { rungName, type Target } from './target.ts';
import { said } from '../../text/said.ts';

export function farWords(
  ladder: Ladder,
  target: Target | undefined,
  weigh: Rung | undefined,
  chosen: boolean,
  role: 'white' | null = null,
): string {
  const { far, over } = ladderWords();
  if (weigh) return far.weigh(rungName(weigh));
  const { action } = ladder.next;
  if (!chosen) {
    if (action === 'calibrate') return far.calibrate;
    if (action === 'connect') return far.connect;
    if (action === 'fit') return role === 'white' ? far.done : far.fit;
    if (action === 'done') return far.done;
    if (action === 'measure more') return far.more;
  }
  if (!target) return far.done;
  if (target.kind === 'card') return far.card(over[target.side]);
  const name = rungName(target.rung);
  return target.over === 'opaque' ? far.read(name) : far.readOver(name, over[target.over]);
}

export function nearWords(ladder: Ladder, target: Target | undefined, weigh: Rung | undefined): string {
  const { near } = ladderWords();
  if (weigh) return near.weigh;
  switch (ladder.next.action) {
    case 'calibrate':
      return near.calibrate;
    case 'connect':
      return near.connect;
    case 'fit':
      return target ? near.read : near.fit;
    case 'draw down':
      return near.pull;
    case 'card':
      return near.card;
    case 'done':
      return target ? near.read : near.done;
    case 'measure more':
      return said(ladder.next.sentence) || near.done;
    default:
      return near.read;
  }
}
