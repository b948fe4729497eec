import { PALETTE } from '../../../../src/fit/palette-sentences.ts';
import { german } from './german.ts';

export const paletteGerman = german(PALETTE, {
  'no-single-film':
    'Messungen von {black} über Schwarz {overBlack} und {white} über Weiß {overWhite} passen zu keinem einzelnen Film: entweder deckt er, so dass sich nur K/S erkennen lässt, oder es war nicht ein und derselbe Film; passen Sie stattdessen beide mit ihren Fehlern an.',
  'refractive-index':
    'Der Brechungsindex {n} ist keiner eines Farbfilms; geben Sie 1 bis 3 (ein frischer Ölfilm hat etwa 1,5).',
  'internal-reflectance':
    'Die innere Reflexion {R} hat kein K/S; sie muss über 0 und höchstens 1 sein, rechnen Sie also erst die Oberfläche heraus.',
  'no-internal':
    'Eine Messung von {measured} hat unter dieser Oberfläche keine innere Reflexion; sie misst über {above} bis {top}, prüfen Sie also Geometrie und Nullpunkt.',
  'unknown-tube': 'Die Palette hat keine Tube „{id}“; sie hat {known}.',
  mass: 'Die Masse von „{id}“ ist {mass}; geben Sie eine Zahl in Gramm, 0 oder mehr.',
  'no-paint': 'Die Mischung enthält keine Farbe; geben Sie mindestens eine Masse über 0.',
});
