import { pilesOf, sharesOfPile } from '../../calibrate/swatch-set/piles.ts';
import type { SwatchSet } from '../../calibrate/swatch-set/schema.ts';
import { ciede2000 } from '../../colour/ciede2000.ts';
import { type Lab, labOfReflectance } from '../../colour/lab.ts';
import { tristimulusWeights } from '../../colour/tristimulus.ts';
import { DEFAULT_WHITE } from '../../colour/illuminant.ts';
import { gridEstimator } from '../../fit/observe/grid-estimate.ts';
import { responseRows } from '../../fit/observe/response-rows.ts';
import { ProfileProblem } from '../problem.ts';
import type { RereadSwatch } from './yearly-reread.ts';
import { say } from '../sentences.ts';

/**
 * The swatches that two sets have in common, by id, as colours: what `yearlyReread` judges.
 * @throws ProfileProblem when the two were read by instruments that cannot be compared.
 */
export function rereadSwatches(first: SwatchSet, again: SwatchSet): RereadSwatch[] {
  if (
    first.instrument.geometry !== again.instrument.geometry ||
    first.instrument.kind !== again.instrument.kind
  ) {
    throw new ProfileProblem(
      say('other-readings', {
        first: first.instrument.kind,
        firstGeometry: first.instrument.geometry,
        again: again.instrument.kind,
        againGeometry: again.instrument.geometry,
      }),
      'instrument',
    );
  }
  const piles = pilesOf(first);
  const white = piles.tubeIds.indexOf(first.tubes.find((t) => t.role === 'white')!.id);
  const zero = new Float64Array(piles.errorCount);
  const [coloursOf, coloursAgain] = [coloursIn(first), coloursIn(again)];
  return first.swatches.flatMap((s): RereadSwatch[] => {
    const other = again.swatches.find((a) => a.id === s.id);
    if (!other) return [];
    const { shares } = sharesOfPile(piles, piles.pileOf.get(s.id)!, zero);
    const one = meanColour(s.readings, coloursOf);
    const two = meanColour(other.readings, coloursAgain);
    return [
      {
        id: s.id,
        role: shares[white] === 1 ? 'white' : shares[white]! > 0 ? 'tint' : 'masstone',
        first: one.lab,
        again: two.lab,
        mcdm: Math.max(one.mcdm, two.mcdm),
      },
    ];
  });
}

type Colours = (reading: ArrayLike<number>) => Lab;

/** Colour of the smoothest spectrum that reads so; both sittings are taken alike. */
function coloursIn(set: SwatchSet): Colours {
  const toGrid = gridEstimator(responseRows(set.instrument));
  const weights = tristimulusWeights(DEFAULT_WHITE);
  return (reading) => labOfReflectance(toGrid(reading), weights);
}

function meanColour(readings: readonly (readonly number[])[], colour: Colours): { lab: Lab; mcdm: number } {
  const mean = readings[0]!.map((_, c) => readings.reduce((s, r) => s + r[c]!, 0) / readings.length);
  const lab = colour(mean);
  return { lab, mcdm: readings.reduce((s, r) => s + ciede2000(colour(r), lab), 0) / readings.length };
}
