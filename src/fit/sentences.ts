/** What a fit found and rests on, and what to measure next. */
import { type Say, catalogue } from '../sentence/catalogue.ts';

export const FIT = catalogue('fit', {
  'in-darks': 'in darks',
  'in-middles': 'in middle values',
  'in-lights': 'in lights',
  advice: '{what:said}: takes the doubt {where:said} from {before:figure} to {after:figure} CIEDE2000.',
  'advice-repeat': 'Read the masstone of {tube} at three more spots',
  'advice-drawdown': 'Draw the masstone of {tube} down once more and read it',
  'advice-tint': 'Add a tint of {tube}, 1:{parts} with {white}',
  'advice-check': 'Mix {tube} 1:1 with {other} and read it as a swatch',
  'read-spectral': 'Read as spectra',
  'read-bands': 'Read in a few bands',
  'read-tristimulus': 'Low confidence: read as XYZ only, so say nothing of other lights',
  'no-masstone-read': 'no masstone was read, so its scattering is a guess from mixtures',
  foretold: 'each rung is foretold by the others within {by:figure} on average',
  'foretold-roughly': 'the rungs foretell each other roughly, {by:figure} on average',
  'rungs-disagree': 'the rungs disagree, {by:figure} on average: paint and read the ladder again',
  'too-few-rungs': 'too few rungs to check them against each other',
  trust: '{parts:list}.',
  'y-is': 'Y is {Y:figure}',
  'light-for-both':
    '{read:said}: light enough for ISO 6504-3 (over {iso:figure}) and ASTM D2805 (over {astm:figure}).',
  'light-for-one':
    '{read:said}: light enough for ASTM D2805 (over {astm:figure}), too dark for ISO 6504-3 (over {iso:figure}).',
  'dark-for-both':
    '{read:said}: too dark for ISO 6504-3 (over {iso:figure}) and ASTM D2805 (over {astm:figure}), so the contrast ratio is informative only.',
  'bridge-size':
    'The bridge "{bridge}" has {count} scattering constants; {wanted} are needed, so fit it in the new white first.',
  'film-thickness': 'A film is thicker than 0; {given:figure} was given.',
  'contrast-ratio': 'A contrast ratio lies between 0 and 1; {ratio:figure} was given.',
  'never-hides':
    'A film of K {K:figure} and S {S:figure} does not reach a contrast ratio of {ratio:figure} at any thickness.',
  'blind-band':
    'A band of the instrument sees nothing from 380 to 730 nm; the grid of constants ends there, so leave it out.',
});
export const say: Say<typeof FIT.templates> = FIT.say;
