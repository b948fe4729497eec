import { EXCHANGE } from '../../../../src/profile/exchange/sentences.ts';
import { german } from './german.ts';

export const exchangeGerman = german(EXCHANGE, {
  columns: 'Das Datenformat nennt {count} Spalten; gelesen werden 1 bis {most}, prüfen Sie also die Datei.',
  'data-first':
    'Daten beginnen in Zeile {line}, bevor ein Datenformat genannt ist; sichern Sie die Datei neu.',
  'no-begin-data':
    'Es steht kein BEGIN_DATA darin; das ist keine CGATS-Textdatei, wählen Sie also eine andere oder ein anderes Format.',
  'cut-off': '{word} fehlt: die Datei ist nach Zeile {line} abgeschnitten; sichern Sie sie neu.',
  'stated-count': '{name} sagt {stated}; gefunden und gelesen wurden {found}.',
  'mixed-signs':
    'Die Datei mischt Dezimalpunkte und Kommas zwischen Ziffern; sagen Sie, ob die Kommas Dezimalkommas sind.',
  commas: 'Die Zahlen sind mit Kommas geschrieben; sagen Sie, ob es Dezimalkommas sind.',
  rows: 'Die Datei hat {rows} Zeilen; gelesen werden bis zu {most}, teilen Sie sie also.',
  'line-values':
    'Zeile {line} hat {count} Werte, das Datenformat nennt {wanted}; verbessern Sie die Zeile und lesen Sie die Datei noch einmal.',
  unquoted: 'Zeile {line}: „{name}“ wurde als ein Name gelesen, denn es stand nicht in Anführungszeichen.',
  'no-rows': 'Die Datei hat keine Datenzeilen; sichern Sie sie neu, mit ihren Messungen.',
  'no-columns':
    'Unter {fields}... sind keine Spalten mit Spektrum, Lab oder XYZ; wählen Sie eine Datei mit Messungen.',
  'row-at': 'Zeile {row}, {column}',
  row: 'Zeile {row}',
  'row-start': 'Zeile {row}',
  'open-quote':
    'Ein Text in Anführungszeichen beginnt in Zeile {line} und endet dort nicht; schließen Sie ihn und lesen Sie die Datei noch einmal.',
  'written-as':
    '„{text}“ wurde als „{ascii}“ geschrieben: CGATS-Text ist hier reines ASCII ohne doppelte Anführungszeichen und Zeilenumbrüche.',
  'evidence-in-json': 'Die Belege jeder Tube (Sprossen, Reste, Vertrauen) bleiben im JSON-Profil.',
  'provenance-in-json': 'Herkunft, Hersteller und Charge bleiben im JSON-Profil.',
  'scattering-in-json': 'Die Streuung je Mikrometer Film bleibt im JSON-Profil.',
  'table-lacks':
    'Die Tabelle sagt nichts über {what}; Konstanten von anderswo brauchen es zum Mischen, bitten Sie also um das JSON-Profil.',
  'no-constants':
    'Die Tabelle enthält kein K und S; sie ist eine Tabelle von Messungen, passen Sie sie also erst an.',
  'no-scattering':
    'Die Tube „{tube}“ hat K, aber kein S; eine Tube braucht beides, sichern Sie sie also neu.',
  'not-csv': 'Die Datei lässt sich nicht als CSV lesen ({cause}); sichern Sie sie neu als einfaches CSV.',
  empty: 'Die Datei ist leer; wählen Sie eine andere.',
  size: 'Die Datei hat {rows} Zeilen zu {columns} Spalten; gelesen werden bis zu {mostRows} Zeilen zu {mostColumns}, teilen Sie sie also.',
  'mixed-decimals':
    'Die Datei mischt Dezimalpunkte und Dezimalkommas; sagen Sie, ob die Kommas Dezimalkommas sind.',
  'cells-separated':
    'Die Zellen trennt ein anderes Zeichen, Kommas zwischen Ziffern wurden also als Dezimalkommas gelesen.',
  cell: 'Zeile {row}, Spalte {column}',
  sample: 'Probe {number}',
  'one-column':
    'Es wurde nur eine Spalte gefunden; eine Messung braucht Wellenlängen und Werte, prüfen Sie also das Trennzeichen.',
  'wavelength-cell': 'Zeile {row}, die Spalte der Wellenlängen',
  'first-column':
    'Die erste Spalte enthält {outside}, wo Wellenlängen von 300 bis 1100 nm hingehören; prüfen Sie den Aufbau der Datei.',
  column: 'Spalte {number}',
  'no-cxf': 'Das XML hat kein CxF-Element mit Inhalt; wählen Sie eine CxF3-Datei oder ein anderes Format.',
  objects: 'Die Datei hat {objects} Objekte; gelesen werden bis zu {most}, teilen Sie sie also.',
  'no-spectra': 'Die Datei hat keine Reflexionsspektren oder Lab-Werte; sichern Sie sie mit ihren Messungen.',
  'not-well-formed': 'Die Datei ist kein wohlgeformtes XML (Zeile {line}: {cause}); sichern Sie sie neu.',
  'not-xml': 'Die Datei lässt sich nicht als XML lesen ({cause}); sichern Sie sie neu.',
  entities:
    'Die Datei erklärt einen Dokumenttyp oder Entitäten, die CxF3 nicht braucht; sichern Sie sie ohne sie.',
  'too-deep':
    'Die Datei schachtelt Elemente tiefer als {depth}; CxF3 braucht etwa 12, sie wurde also nicht gelesen.',
  'no-start': '„{name}“ sagt nicht, bei welcher Wellenlänge sein Spektrum beginnt; ergänzen Sie StartWL.',
  'step-taken': 'Der Schritt der Spektren wurde aus ihrer ersten und letzten Wellenlänge genommen: {nm} nm.',
  'no-step':
    '„{name}“ sagt nicht, welchen Schritt sein Spektrum hat; seine Farbangabe braucht eine WavelengthRange.',
  'spectrum-of': 'das Spektrum von „{name}“',
  'constants-left-out':
    'K, S und ihre Kovarianz wurden weggelassen: der CxF3-Kern enthält Messungen; nehmen Sie für Konstanten das JSON-Profil oder CGATS.',
  'lab-left-out':
    'Lab und XYZ wurden weggelassen{under}: sie folgen aus den Spektren, die geschrieben wurden.',
  under: ' (unter {white})',
  'odd-masses':
    '„{text}“ steht dort, wo dieses Programm Massen oder Angaben des Satzes in Klammern schreibt; sichern Sie die Datei neu.',
  'response-in-json': 'Die Empfindlichkeitskurven des Geräts bleiben im JSON-Mustersatz.',
  'truths-in-json': 'Rauschfreie Wahrheiten von Proben bleiben im JSON-Mustersatz.',
  'no-masses':
    'Die Datei enthält Messungen und sagt nicht, welche Tuben in jede eingewogen wurden; tragen Sie die Massen jedes Musters ein.',
  'no-geometry':
    'Die Datei sagt nicht, wie das Gerät beleuchtet und schaut; nennen Sie die Geometrie: 45/0 oder d/8 mit oder ohne Glanz.',
  'read-as-per-cent': 'Die größte Zahl der Spektren ist {largest}, die Datei wurde also als Prozent gelesen.',
  'read-as-fractions':
    'Die größte Zahl der Spektren ist {largest}, die Datei wurde also als Anteile von 1 gelesen.',
  'which-scale':
    'Die größte Zahl der Spektren ist {largest}; das kann eine dunkle Farbe als Anteil oder eine schwarze in Prozent sein; sagen Sie, welches.',
  'not-a-number':
    '„{text}“ steht in {where}, wo eine Zahl hingehört; verbessern Sie die Datei und lesen Sie sie noch einmal.',
  twice: '{where} gibt {nm} nm zweimal; behalten Sie eines der beiden.',
  characters:
    'Die Datei hat {count} Millionen Zeichen; gelesen werden bis zu {most} Millionen, teilen Sie sie also.',
  quantity:
    '„{text}“ ist die Größe in {where}; sie ist eine von {known}, verbessern Sie sie also und lesen Sie die Datei noch einmal.',
});
