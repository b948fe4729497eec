import type { FitResult, TubeFitAnswer } from '../../../../server/api/fits.ts';
import type { ProfileTube } from '../../../../src/profile/schema.ts';

/** A rung from a file may carry its tube's name before its own: under the tube's heading its own is enough. */
export function ownName(rung: string, { id, label }: Pick<ProfileTube, 'id' | 'label'>): string {
  for (const name of [id, label]) {
    if (rung.startsWith(name)) return rung.slice(name.length).replace(/^[\s:_-]+/, '') || rung;
  }
  return rung;
}

const named = new WeakMap<TubeFitAnswer, TubeFitAnswer>();

/** The fit of a tube, its rungs called by their own names; the same answer for the same fit, so nothing is drawn twice. */
export function fitUnder(
  result: FitResult | undefined,
  tube: Pick<ProfileTube, 'id' | 'label'>,
): TubeFitAnswer | undefined {
  const fit = result?.tubes.find((f) => f.tubeId === tube.id);
  if (!fit) return undefined;
  const known = named.get(fit);
  if (known) return known;
  const short = { ...fit, rungs: fit.rungs.map((rung) => ({ ...rung, name: ownName(rung.name, tube) })) };
  named.set(fit, short);
  return short;
}
