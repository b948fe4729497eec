/** What was typed or pasted and cannot be taken, and what had to be assumed about it. */
import { type Say, catalogue } from '../../sentence/catalogue.ts';

export const ENTRY = catalogue('entry', {
  'no-number': 'No number was typed; type or paste them, with spaces between.',
  'point-decimal': 'The point was read as the decimal sign and the comma as a separator.',
  'two-ways': '"{text}" can be read in two ways; put spaces or semicolons between the numbers.',
  'comma-decimal': 'The comma was read as the decimal sign.',
  'odd-token': '"{text}" is no number; mend it, with a point or a comma for decimals.',
  unpaired: '{count} numbers do not pair up; each wavelength in nm needs its value after it.',
  'zero-to-one': '0 to 1',
  'per-cent': 'per cent',
  'y-at-100': 'Y of white at 100',
  'y-at-1': 'Y of white at 1',
  'not-a-number': 'Value {place} is not a number; type it again.',
  geometry: 'Geometry "{geometry}" is not known; name one of {known}, as the instrument\'s sheet has it.',
  'places-values': 'There are {places} wavelengths or bands and {values} values; give one value for each.',
  band: 'band {number}',
  'band-range':
    '{band:said} has its centre at {centre:figure} nm and a width of {width:figure} nm; 300 to 1100 nm and up to 400 nm are allowed. Give both in nm.',
  'no-white':
    'A colour without its illuminant and observer says nothing; name both, such as D65 and 10deg, as on the instrument.',
  'three-xyz': 'XYZ has three numbers; {count} were given.',
  'three-lab': 'Lab has three numbers; {count} were given.',
  lightness: 'L* is {L:figure}; 0 to 108 is allowed for a painted patch. Check the order: L*, a*, b*.',
  'no-colour':
    'Lab {L:figure}, {a:figure}, {b:figure} is no colour a paint can have under {white}; check the signs of a* and b*.',
  'scale-named':
    'No value is above {most:figure}: taken as {coarse:said} as named, which is very dark; if it was {fine:said}, say so.',
  'scale-taken': 'Taken as {coarse:said}, because {most:figure} is too much for {fine:said}.',
  'scale-question':
    'The largest value is {most:figure}, which could be {fine:said} or, for a dark paint, {coarse:said}; say which.',
  reflectance:
    '{typed:figure} at {place:said} is a reflectance factor of {factor:figure}; {lowest:figure} to {highest:figure} is allowed. Mend the number, or name the right scale.',
  'two-wavelengths': 'A spectrum needs two wavelengths or more; for one band use bands.',
  'no-wavelength':
    '{nm:figure} is no wavelength in nm (200 to 2600 is allowed); give nm: 0.55 micrometres is 550.',
  'wavelength-twice': '{nm:figure} nm is there twice; leave one out.',
  'spectrum-range':
    'The spectrum runs from {first:figure} to {last:figure} nm; some of {from:figure}-{to:figure} nm is needed.',
  sorted: 'The wavelengths were not ascending; they were sorted with their values.',
  'spectrum-ends':
    'The spectrum stops at {first:figure} and {last:figure} nm; colours outside that range rest on its end values (400-700 nm is the usual least).',
});
export const say: Say<typeof ENTRY.templates> = ENTRY.say;
