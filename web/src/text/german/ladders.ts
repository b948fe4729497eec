import { LADDERS } from '../../../../server/api/sentences/ladders.ts';
import { german } from './german.ts';

export const laddersGerman = german(LADDERS, {
  'no-rung': 'Die Leiter hat keine Sprosse „{id}“; holen Sie die Leiter noch einmal.',
  'put-aside': 'Diese Leiter wurde weggelegt; beginnen Sie für die Tube eine neue.',
  pours:
    '{rung} besteht aus {pours} Mengen, und gegeben wurden {masses} Massen; tragen Sie für jede eine ein.',
  'pulled-after':
    '{rung} wurde am {read} gemessen und kann nicht erst am {pulled} aufgezogen sein; geben Sie diesen Tag oder einen früheren.',
  'no-reading': 'Die Leiter hat keine Messung „{id}“; holen Sie die Leiter noch einmal.',
  undone: 'Diese Messung wurde zurückgenommen; wiederholen Sie sie, bevor Sie darüber entscheiden.',
  'nothing-to-undo': 'Auf dieser Leiter gibt es nichts zurückzunehmen.',
  'nothing-to-redo': 'Auf dieser Leiter gibt es nichts wieder zu tun.',
  weighing: 'das Wägen: {rung}',
  reading: 'Messung {number}: {rung}',
  'no-ladder': 'Eine Leiter „{id}“ gibt es nicht; öffnen Sie das Regal und wählen Sie eine Tube.',
  'close-block':
    'Alle Sprossen sind gemessen; messen Sie die Weißkachel noch einmal: sie schließt den Block der letzten {count} {readings}.',
  'no-tube': 'Eine Tube „{id}“ gibt es nicht; wählen Sie eine im Regal.',
  'no-white':
    'Die Palette hat noch kein Weiß, und Aufhellungen werden damit gemacht; benennen Sie im Regal eine Tube als das Weiß.',
  'has-ladder':
    '„{tube}“ hat schon eine Leiter; machen Sie damit weiter, oder legen Sie sie weg, bevor Sie eine andere beginnen.',
  'no-card-films':
    'Diese Leiter hat keine Filme über einer Karte; beginnen Sie eine mit Kartenfilmen, um sie zu messen.',
  'press-failed': 'Das Programm ist an diesem Druck gescheitert; messen Sie noch einmal.',
  'wrong-way-round':
    '{rung} misst sich, als wären die beiden Massen vertauscht aufgeschrieben; tauschen Sie sie, wenn es so gewogen wurde, und passen Sie noch einmal an.',
  keeping: 'gelten lassen: {reading}',
  'sending-back': 'zurückgeben: {reading}',
});
