/** What a prediction from constants cannot be made of. */
import { type Say, catalogue } from '../sentence/catalogue.ts';

export const PALETTE = catalogue('palette', {
  'no-single-film':
    'Readings of {black:figure} over black {overBlack:figure} and {white:figure} over white {overWhite:figure} fit no single film: either it hides, so that only K/S can be known, or the two were not one film; fit both with their errors instead.',
  'refractive-index':
    'Refractive index {n:figure} is not one of a paint film; give 1 to 3 (a fresh oil film is near 1.5).',
  'internal-reflectance':
    'Internal reflectance {R:figure} has no K/S; it must be above 0 and at most 1, so correct the surface first.',
  'no-internal':
    'A reading of {measured:figure} has no internal reflectance under this surface; it reads above {above:figure} and up to {top:figure}, so check the geometry and the zero.',
  'unknown-tube': 'The palette has no tube "{id}"; it has {known}.',
  mass: 'The mass of "{id}" is {mass:figure}; give a number of grams, 0 or more.',
  'no-paint': 'The mixture holds no paint; give at least one mass above 0.',
});
export const say: Say<typeof PALETTE.templates> = PALETTE.say;
