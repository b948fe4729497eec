import type { Swatch, SwatchSet } from '../../calibrate/swatch-set/schema.ts';
import type { PaletteFit } from '../palette-fit.ts';

/**
 * A rung whose two masses were noted the wrong way round can pass for having changed places with its neighbour, and two
 * that changed places for masses noted wrong. Each is mended in turn and the tube fitted again with its white: the mistake is
 * the one whose mending leaves less.
 * @param swapped ids of the swatches of the rung that may have been noted the wrong way round
 * @param exchanged ids of two swatches that may have changed places
 * @param fit fits a set as it stands
 */
export function ratherSwapped(
  set: SwatchSet,
  tubeId: string,
  swapped: readonly string[],
  exchanged: readonly string[],
  fit: (set: SwatchSet) => PaletteFit,
): boolean {
  const white = set.tubes.find((t) => t.role === 'white')!.id;
  const among = new Set([tubeId, white]);
  const own = set.swatches.filter((s) => tubesOf(s, set).every((id) => among.has(id)));
  const left = (swatches: readonly Swatch[]): number => {
    const tubes = set.tubes.filter((t) => among.has(t.id));
    const { rungs } = fit({ ...set, tubes, swatches: [...swatches], checks: [] }).tubes.find(
      ({ tube }) => tube.id === tubeId,
    )!.evidence;
    return rungs.reduce((sum, r) => sum + r.deltaE00 ** 2, 0);
  };
  const turned = own.map((s) => (swapped.includes(s.id) ? turnedRound(s, tubeId, white) : s));
  const [a, b] = exchanged.map((id) => own.find((s) => s.id === id));
  if (!a || !b) return true;
  const back = own.map((s) =>
    s === a ? { ...s, readings: b.readings } : s === b ? { ...s, readings: a.readings } : s,
  );
  return left(turned) < left(back);
}

function turnedRound(swatch: Swatch, tube: string, white: string): Swatch {
  const { masses, made } = swatch;
  if (made?.length === 2) {
    const [p, q] = [made[0]!, made[1]!];
    return {
      ...swatch,
      made: [
        { ...p, grams: q.grams },
        { ...q, grams: p.grams },
      ],
    };
  }
  return masses ? { ...swatch, masses: { [tube]: masses[white] ?? 0, [white]: masses[tube] ?? 0 } } : swatch;
}

/** Ids of the tubes in a swatch, through dilutions. */
function tubesOf({ masses = {}, made = [] }: Swatch, set: SwatchSet): string[] {
  return [
    ...Object.keys(masses).filter((id) => masses[id]! > 0),
    ...made.flatMap((part) => {
      if ('tube' in part) return [part.tube];
      const source = set.swatches.find((s) => s.id === part.from);
      return source ? tubesOf(source, set) : [];
    }),
  ];
}
