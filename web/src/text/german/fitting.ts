import { FITTING } from '../../../../server/api/sentences/fitting.ts';
import { german } from './german.ts';

export const fittingGerman = german(FITTING, {
  'read-again':
    'Später noch einmal gemessen, das sagt die Änderung beim Trocknen und wird nicht gemittelt: {names}.',
  'not-weighed':
    '{tube} {rung} ist gemessen und nicht gewogen; tragen Sie die Gramm ein und passen Sie noch einmal an.',
  'card-missing':
    '{tube} {rung} ist über {side} gemessen und die leere Karte ({card}) nicht; messen Sie die Karte und passen Sie noch einmal an.',
  'count-of': '{count} von {rung}',
  'waiting-for-white':
    '{tube}: Messungen, die auf das Weiß warten, das ihren Block schließt, sind weggelassen ({readings}); messen Sie die Weißkachel noch einmal und passen Sie neu an.',
  'all-sent-back':
    '{tube}: alle Messungen ({rungs}) gingen zurück, weil das Weiß wanderte; messen Sie noch einmal und passen Sie neu an.',
  fault:
    'Die Anpassung blieb an einem Fehler im Programm stehen; die Messungen sind sicher, und das Protokoll enthält die Einzelheiten.',
  'no-fit': 'Eine Anpassung „{id}“ gibt es nicht; starten Sie eine auf der Seite Konstanten.',
  running: 'Eine Anpassung dieser Palette läuft; warten Sie, oder halten Sie sie an.',
  'nothing-to-fit':
    'Noch lässt sich nichts Gemessenes anpassen; messen Sie erst den Vollton des Weiß und einer Tube.',
  'no-result': 'Diese Anpassung hat kein Ergebnis; starten Sie sie noch einmal.',
  'reads-like': 'misst sich wie {like}, nicht {weighed}',
  'reads-like-left-out': 'misst sich wie {like}, nicht {weighed}, und wurde weggelassen',
  'not-believed': 'wurde nicht geglaubt und weggelassen',
  fitting: '{tubes} Tuben aus {swatches} Mustern werden angepasst.',
  writing: 'Das Profil wird geschrieben.',
  'nothing-read':
    'Für diese Palette ist noch nichts gemessen; messen Sie erst eine Leiter, oder nehmen Sie einen Mustersatz auf.',
  done: 'Fertig.',
  stopped: 'Angehalten.',
  'program-stopped': 'Das Programm wurde während dieser Anpassung beendet; starten Sie sie noch einmal.',
  'mend-rung':
    '{rung} {reads}: mischen Sie sie neu und ziehen Sie sie noch einmal auf, und wägen Sie sie auf einer feineren Waage, wenn es geht.',
  'few-rungs':
    'Diese Tube hat {count} Sprossen; ein Vollton und Aufhellungen 1:1, 1:4 und 1:16 trennen K von S.',
  'read-three-times': 'Messen Sie dreimal: {rungs}. Sonst ist das Rauschen geraten.',
  'xyz-alone':
    'Messungen nur als XYZ lassen die Kurven lose; ein paar Bänder oder ein Spektrum machten sie fester.',
  'no-tube': 'Eine Tube „{id}“ gibt es nicht; wählen Sie eine im Regal.',
  'no-constants': '„{tube}“ hat noch keine Konstanten; messen Sie ihre Leiter und passen Sie sie an.',
});
