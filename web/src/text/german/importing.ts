import { IMPORTING } from '../../../../server/api/sentences/importing.ts';
import { german } from './german.ts';

export const importingGerman = german(IMPORTING, {
  'not-json': '„{file}“ ist kein JSON ({cause}); wählen Sie einen Mustersatz oder ein Palettenprofil.',
  format:
    '„{file}“ nennt das Format {format}; wählen Sie einen Mustersatz ("swatch-set") oder ein Palettenprofil ("palette-profile").',
  'geometry-by-you': 'Die Datei sagt nichts zur Geometrie; Sie haben sie genannt.',
  'geometry-changed': 'Die Datei sagt {said}; Sie haben es geändert.',
  'white-by-you': 'Sie haben das Weiß genannt, mit dem die Aufhellungen gemacht sind.',
  'sidecar-unreadable': 'Das JSON neben dem CSV lässt sich nicht lesen; sichern Sie beide zusammen neu.',
  'sidecar-other': 'Das JSON neben dem CSV gehört nicht dazu; sichern Sie beide zusammen neu.',
  'by-this-program': 'Von diesem Programm geschrieben.',
  'written-by': 'Geschrieben von {program}.',
  'geometry-note': 'Die Datei vermerkt zu ihrer Geometrie: {note}.',
  'weighing-assumed':
    'Die Datei sagt nicht, wie genau gewogen wurde; die Verhältnisse gelten als auf {percent} % genau.',
  'from-repeats': 'aus Wiederholungen',
  'noise-assumed':
    'Die Datei sagt nicht, wie stark eine Messung rauscht; es wird aus den Wiederholungen geschätzt.',
  'no-label': '{count} der Tuben haben kein Etikett; statt dessen steht ihre id.',
  'in-no-swatch': '„{tube}“ kommt in keinem Muster vor; sie bekommt keine Konstanten.',
  'no-geometry':
    '„{file}“ sagt nicht, wie das Gerät beleuchtet und schaut; nennen Sie die Geometrie, wie sie im Datenblatt des Geräts steht.',
  'no-readings': '„{file}“ enthält keine Messungen; wählen Sie eine andere Datei.',
  'which-sample': '„{file}“ enthält {count} Proben; nennen Sie die, die gelten soll.',
  'no-sample': '„{file}“ hat keine Probe „{sample}“; wählen Sie eine von denen darin.',
  'no-white':
    '„{file}“ gibt eine Farbe ohne ihre Lichtart und ihren Beobachter; tippen Sie die drei Zahlen ein und nennen Sie beide.',
  'no-numbers': '„{file}“ hat keine Zahlen für „{sample}“; wählen Sie eine andere Probe.',
});
