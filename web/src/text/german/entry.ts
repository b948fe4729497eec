import { ENTRY } from '../../../../src/calibrate/entry/sentences.ts';
import { german } from './german.ts';

export const entryGerman = german(ENTRY, {
  'no-number': 'Es steht keine Zahl da; tippen oder fügen Sie sie ein, mit Leerzeichen dazwischen.',
  'point-decimal': 'Der Punkt wurde als Dezimalzeichen gelesen und das Komma als Trennzeichen.',
  'two-ways':
    '„{text}“ lässt sich auf zwei Arten lesen; setzen Sie Leerzeichen oder Strichpunkte zwischen die Zahlen.',
  'comma-decimal': 'Das Komma wurde als Dezimalzeichen gelesen.',
  'odd-token': '„{text}“ ist keine Zahl; verbessern Sie es, mit Punkt oder Komma für die Dezimalen.',
  unpaired: '{count} Zahlen gehen nicht in Paaren auf; auf jede Wellenlänge in nm folgt ihr Wert.',
  'zero-to-one': '0 bis 1',
  'per-cent': 'Prozent',
  'y-at-100': 'Y des Weiß bei 100',
  'y-at-1': 'Y des Weiß bei 1',
  'not-a-number': 'Wert {place} ist keine Zahl; tippen Sie ihn noch einmal.',
  geometry:
    'Die Geometrie „{geometry}“ ist nicht bekannt; nennen Sie eine von {known}, wie es im Datenblatt des Geräts steht.',
  'places-values':
    'Es sind {places} Wellenlängen oder Bänder und {values} Werte; geben Sie für jede einen Wert.',
  band: 'Band {number}',
  'band-range':
    '{band} hat die Mitte bei {centre} nm und die Breite {width} nm; erlaubt sind 300 bis 1100 nm und bis zu 400 nm. Geben Sie beides in nm.',
  'no-white':
    'Eine Farbe ohne Lichtart und Beobachter sagt nichts; nennen Sie beide, etwa D65 und 10deg, wie am Gerät.',
  'three-xyz': 'XYZ hat drei Zahlen; gegeben sind {count}.',
  'three-lab': 'Lab hat drei Zahlen; gegeben sind {count}.',
  lightness:
    'L* ist {L}; für ein gemaltes Feld ist 0 bis 108 erlaubt. Prüfen Sie die Reihenfolge: L*, a*, b*.',
  'no-colour':
    'Lab {L}, {a}, {b} ist unter {white} keine Farbe, die Farbe haben kann; prüfen Sie die Vorzeichen von a* und b*.',
  'scale-named':
    'Kein Wert liegt über {most}: wie genannt als {coarse} genommen, das ist sehr dunkel; war es {fine}, sagen Sie es.',
  'scale-taken': 'Als {coarse} genommen, denn {most} ist zu viel für {fine}.',
  'scale-question':
    'Der größte Wert ist {most}; das kann {fine} sein oder, bei einer dunklen Farbe, {coarse}; sagen Sie, welches.',
  reflectance:
    '{typed} bei {place} ist ein Reflexionsgrad von {factor}; erlaubt ist {lowest} bis {highest}. Verbessern Sie die Zahl oder nennen Sie die richtige Skala.',
  'two-wavelengths':
    'Ein Spektrum braucht zwei Wellenlängen oder mehr; für ein einzelnes Band nehmen Sie Bänder.',
  'no-wavelength':
    '{nm} ist keine Wellenlänge in nm (erlaubt ist 200 bis 2600); geben Sie nm: 0,55 Mikrometer sind 550.',
  'wavelength-twice': '{nm} nm kommt zweimal vor; lassen Sie eines weg.',
  'spectrum-range': 'Das Spektrum geht von {first} bis {last} nm; etwas von {from}-{to} nm wird gebraucht.',
  sorted: 'Die Wellenlängen standen nicht aufsteigend; sie wurden mit ihren Werten geordnet.',
  'spectrum-ends':
    'Das Spektrum endet bei {first} und {last} nm; Farben außerhalb ruhen auf seinen Endwerten (400-700 nm ist das übliche Mindeste).',
});
