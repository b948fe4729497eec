import { STUDY } from '../../../../src/study/sentences.ts';
import { german } from './german.ts';

export const studyGerman = german(STUDY, {
  'no-paint':
    'Das Rezept enthält keine Farbe; ein Rezept hat mindestens eine Tube mit einer Masse über null.',
  'canvas-width': 'Breite der Leinwand',
  'canvas-height': 'Höhe der Leinwand',
  'times-needed': 'Vielfaches der nötigen Farbe',
  'out-of-range':
    '{name}: {value} {unit}; das liegt zwischen {low} und {high} {unitAgain}. Verbessern Sie es.',
  steps:
    'Verlangt sind {steps} Tonwertstufen; eine Studie hat 2 bis 9. Wählen Sie eine ganze Zahl dazwischen.',
  share: 'Als kleinster Anteil ist {share} verlangt; er liegt zwischen 0 und 0,5 der Fläche.',
  specks: 'Flecken bis {pixels} Bildpunkte sind verlangt; geben Sie eine ganze Zahl von 0 bis 20.',
  'picture-size':
    'Das Bild hat {width} mal {height} Bildpunkte; jede Seite ist eine ganze Zahl von 1 bis {most}. Wählen Sie ein anderes Bild.',
  'picture-numbers':
    'Ein Bild von {width} mal {height} Bildpunkten hat {count} Zahlen; gegeben wurden {given}. Öffnen Sie es noch einmal.',
  crop: 'Der Ausschnitt ({width} mal {height} bei {x}, {y}) reicht über das Bild von {pictureWidth} mal {pictureHeight} Bildpunkten hinaus; ziehen Sie ihn innerhalb.',
  'no-recipe': 'Es gibt kein Rezept zum Abwägen; suchen Sie erst eines für die Familie.',
  'value-steps': 'Verlangt sind {count} Tonwertstufen; verlangen Sie eine ganze Zahl ab 1.',
});
