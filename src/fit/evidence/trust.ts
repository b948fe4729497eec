import type { InstrumentDescription } from '../../calibrate/swatch-set/schema.ts';
import type { RungEvidence } from '../palette-fit.ts';

/** CIEDE2000 of rungs left out: under this the constants foretell, above the other they do not. Project's own. */
const FORETELLS = 1;
const ROUGH = 3;

const READ: Record<InstrumentDescription['kind'], string> = {
  spectral: 'Read as spectra',
  bands: 'Read in a few bands',
  tristimulus: 'Low confidence: read as XYZ only, so say nothing of other lights',
};

/** One honest line on what a tube's constants can be trusted with. */
export function trustLine(
  kind: InstrumentDescription['kind'],
  rungs: readonly RungEvidence[],
  hasMasstone: boolean,
): string {
  const left = rungs.flatMap((r) => (r.leftOutDeltaE00 === undefined ? [] : [r.leftOutDeltaE00]));
  const parts = [READ[kind]];
  if (!hasMasstone) parts.push('no masstone was read, so its scattering is a guess from mixtures');
  if (left.length > 0) {
    const mean = left.reduce((a, b) => a + b, 0) / left.length;
    const figure = `${mean.toFixed(1)} CIEDE2000`;
    if (mean <= FORETELLS) parts.push(`each rung is foretold by the others within ${figure} on average`);
    else if (mean <= ROUGH) parts.push(`the rungs foretell each other roughly, ${figure} on average`);
    else parts.push(`the rungs disagree, ${figure} on average: paint and read the ladder again`);
  } else parts.push('too few rungs to check them against each other');
  return `${parts.join('; ')}.`;
}
