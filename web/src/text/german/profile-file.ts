import { PROFILE_FILE } from '../../../../src/profile/read-sentences.ts';
import { german } from './german.ts';

export const profileFileGerman = german(PROFILE_FILE, {
  unreadable:
    '{at} im Profil lässt sich nicht lesen: {issue}; verbessern Sie es oder sichern Sie das Profil neu.',
  'not-json':
    'Die Datei ist kein JSON ({cause}); ein Palettenprofil ist ein JSON-Dokument, wählen Sie also eine andere Datei.',
  'not-an-object':
    'Ein Palettenprofil ist ein JSON-Objekt; gegeben wurde etwas anderes, wählen Sie also eine andere Datei.',
  format:
    'Das Dokument nennt das Format {format}; bei einem Palettenprofil steht "palette-profile". Ein Mustersatz wird erst angepasst, das ergibt ein Profil.',
  version:
    'Das Profil hat die Version {version}; dieses Programm liest Version 1. Nehmen Sie ein neueres Programm, oder sichern Sie es neu.',
  wavelength:
    'Wellenlänge {number} des Profils ist {nm} nm; Version 1 liegt auf 380 bis 730 nm in Schritten von 10 nm, bringen Sie es also auf dieses Raster.',
  'same-id': 'Zwei Tuben haben die id „{id}“; geben Sie jeder eine eigene.',
  'not-above-zero':
    '{name} von „{tube}“ ist {value} bei {nm} nm; K und S liegen über null, passen Sie die Tube also neu an.',
  'shared-columns':
    '„{tube}“ hat {count} gemeinsame Kovarianzspalten, die erste Tube {wanted}; sie sind ein Satz für das ganze Profil.',
  'frame-doubt':
    'Der Zweifel am Rahmen in {name} hat {count} Einträge, die Tuben haben {wanted} gemeinsame Kovarianzspalten; Profil neu ausgeben.',
  'unknown-white':
    'Das Profil nennt „{white}“ als sein Weiß und hat keine solche Tube; nennen Sie eine von {known}.',
  'no-escape': 'Eine 45/0-Oberfläche braucht ihre Entweichkonstante; sichern Sie das Profil neu.',
  discrepancy: 'Die Abweichung besteht aus 36 Zahlen, keine unter null; passen Sie neu an.',
});
