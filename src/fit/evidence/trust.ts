import type { InstrumentDescription } from '../../calibrate/swatch-set/schema.ts';
import type { RungEvidence } from '../palette-fit.ts';
import { say } from '../sentences.ts';

/** CIEDE2000 of rungs left out: under this the constants foretell, above the other they do not. Project's own. */
const FORETELLS = 1;
const ROUGH = 3;

const READ: Record<InstrumentDescription['kind'], string> = {
  spectral: say('read-spectral'),
  bands: say('read-bands'),
  tristimulus: say('read-tristimulus'),
};

/** One honest line on what a tube's constants can be trusted with. */
export function trustLine(
  kind: InstrumentDescription['kind'],
  rungs: readonly RungEvidence[],
  hasMasstone: boolean,
): string {
  const left = rungs.flatMap((r) => (r.leftOutDeltaE00 === undefined ? [] : [r.leftOutDeltaE00]));
  const parts = [READ[kind]];
  if (!hasMasstone) parts.push(say('no-masstone-read'));
  if (left.length > 0) {
    const mean = left.reduce((a, b) => a + b, 0) / left.length;
    const figure = `${mean.toFixed(1)} CIEDE2000`;
    if (mean <= FORETELLS) parts.push(say('foretold', { by: figure }));
    else if (mean <= ROUGH) parts.push(say('foretold-roughly', { by: figure }));
    else parts.push(say('rungs-disagree', { by: figure }));
  } else parts.push(say('too-few-rungs'));
  return say('trust', { parts: parts.join('; ') });
}
