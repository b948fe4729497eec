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
  frame:
    'Found from all tubes together: {parts:list}. These serve the mixtures: they take up what the equations miss, and are no properties of paint or varnish.',
  'frame-inside':
    'k2, the light that the surface turns back inside, is {value:figure} give or take {doubt:figure}',
  'frame-haze': 'the haze of the surface is {value:figure} give or take {doubt:figure}',
  'frame-crowding':
    'a gram of the white scatters {percent:figure} % more spread thin than crowded in its masstone, give or take {doubt:figure} %',
  'y-is': 'Y is {Y:figure}',
  'light-for-both':
    '{read:said}: light enough for ISO 6504-3 (over {iso:figure}) and ASTM D2805 (over {astm:figure}).',
  'light-for-one':
    '{read:said}: light enough for ASTM D2805 (over {astm:figure}), too dark for ISO 6504-3 (over {iso:figure}).',
  'dark-for-both':
    '{read:said}: too dark for ISO 6504-3 (over {iso:figure}) and ASTM D2805 (over {astm:figure}), so the contrast ratio is informative only.',
  'bridge-size':
    'The bridge "{bridge}" has {count} scattering constants; {wanted} are needed, so fit it in the new white first.',
  'combine-size': '"{tube}" has {k} and {s} constants; both fits need {wanted}, so fit each first.',
  'combine-columns':
    'The two fits of "{tube}" have {one} and {two} shared columns; put both into one palette first.',
  'film-thickness': 'A film is thicker than 0; {given:figure} was given.',
  'contrast-ratio': 'A contrast ratio lies between 0 and 1; {ratio:figure} was given.',
  'never-hides':
    'A film of K {K:figure} and S {S:figure} does not reach a contrast ratio of {ratio:figure} at any thickness.',
  'blind-band':
    'A band of the instrument sees nothing from 380 to 730 nm; the grid of constants ends there, so leave it out.',
  'other-instruments':
    'The wet and the dry readings are of different instruments; read both with one, the same way.',
  'no-same-id': 'No swatch has the same id in both documents; keep the ids when reading again.',
  dried: '"{swatch}" dried {way:list}: {deltaE:figure} CIEDE2000{since:said}.',
  'dried-the-same': '"{swatch}" shows no drying shift beyond the noise of its readings{since:said}.',
  'more-colourful': 'more colourful',
  'shade-apart': 'a shade apart',
  since: ', from day {from} to day {to}',
  exchanged:
    '"{one}" and "{two}" read as if they had changed places: look at the labels and read both again.',
  veiled:
    '"{rung}" reads as under an even veil of {percent:figure} that the other rungs do not have: a fingerprint, dust or a sunk surface. Clean it or oil it out, and read it again.',
  'even-darker':
    '"{rung}" reads darker by an even {percent:figure} than the other rungs foretell, as a film that is still wet or glossier than they are: let it dry as long as they did, and read it again.',
  'odd-rung':
    '"{rung}" does not read as the other rungs foretell, and no simple cause explains it: look at the patch, and paint and read it again.',
  'wrong-ratio':
    '"{rung}" was weighed 1:{weighed:figure} ({tube} to white) and reads like 1:{reads:figure}{swapped:said}. The chance that the ratio is wrong is {percent:figure} %: paint it again or mend the masses.',
  swapped: '; the two masses look to have been noted the wrong way round',
  'no-thickness':
    "No drawdown of these readings has a known thickness, so a film cannot be told in micrometres; ask in units of the white's scattering, or give one film's thickness and fit again.",
  'no-noise': 'The readings of "{swatch}" have no noise; give the instrument\'s noise.',
  'not-inverted': 'The curvature could not be inverted; the cost may not be finite here.',
  'most-iterations': 'The most iterations allowed were used.',
  gradient: 'The gradient is within `gtol` of zero.',
  cost: 'The cost falls by less than `ftol` of itself.',
  step: 'The step is shorter than `xtol` of the point.',
  'reference-tint':
    'The reference tint absorbs no more than the white there (K/S {paint:figure} against {white:figure}); give its greatest absorption.',
  'strength-of-white': '"{id}" is the white of the tints; tinting strength is of the tubes mixed into it.',
  'strength-of-light':
    '"{id}" is as light as the white; a half-strength ratio needs a paint that darkens it.',
  'no-swatches':
    'The swatch set holds no swatches to fit; a document of checks is for "check", so give one with swatches.',
  'no-masstone': 'No masstone among the swatches: scattering rests on the strongest mixture.',
  'doubt-curves': 'its own curves',
  'doubt-white': 'the white and the surface, which every tube shares',
  'doubt-others': 'the tubes it is mixed with',
  'doubt-equations': 'what the equations miss, which no reading lessens',
  'doubt-share': '{percent} % of the doubt comes from {what:said}',
  'worst-in': ', most of all in {where:word} ({radius:figure})',
  'holds-within': 'Mixtures with it hold within {radius:figure} CIEDE2000{worst:said}; {share:said}.',
});
export const say: Say<typeof FIT.templates> = FIT.say;
