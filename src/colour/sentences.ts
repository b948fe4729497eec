/** Numbers that no colour calculation can take. */
import { type Say, catalogue } from '../sentence/catalogue.ts';

export const COLOUR = catalogue('colour', {
  'two-whites': 'A colour under {one} cannot be compared with one under {two}; convert one first.',
  'grid-size': 'A spectrum on the 380-730 nm grid has {size} numbers; {count} were given. Resample it first.',
  illuminant: 'Illuminant "{illuminant}" is not known; use one of {known}.',
  observer: 'Observer "{observer}" is not known; use 2deg or 10deg.',
  'no-wavelength': 'Interpolation needs at least one wavelength; none was given.',
  'not-ascending': 'Wavelengths must ascend; {nm:figure} nm follows {before:figure} nm. Sort them first.',
  weights: 'The weights are for {wavelengths} wavelengths; {count} reflectances were given.',
});
export const say: Say<typeof COLOUR.templates> = COLOUR.say;
