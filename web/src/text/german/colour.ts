import { COLOUR } from '../../../../src/colour/sentences.ts';
import { german } from './german.ts';

export const colourGerman = german(COLOUR, {
  'two-whites':
    'Eine Farbe unter {one} lässt sich nicht mit einer unter {two} vergleichen; rechnen Sie erst eine um.',
  'grid-size':
    'Ein Spektrum auf dem Raster von 380-730 nm hat {size} Zahlen; gegeben wurden {count}. Bringen Sie es erst auf das Raster.',
  illuminant: 'Die Lichtart „{illuminant}“ ist nicht bekannt; nehmen Sie eine von {known}.',
  observer: 'Der Beobachter „{observer}“ ist nicht bekannt; nehmen Sie 2deg oder 10deg.',
  'no-wavelength': 'Zum Interpolieren braucht es mindestens eine Wellenlänge; es ist keine da.',
  'not-ascending': 'Wellenlängen müssen steigen; auf {before} nm folgt {nm} nm. Ordnen Sie sie erst.',
  weights: 'Die Gewichte sind für {wavelengths} Wellenlängen; gegeben wurden {count} Reflexionsgrade.',
});
