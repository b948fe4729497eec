import { LINEARITY } from '../../../../src/calibrate/linearity/sentences.ts';
import { german } from './german.ts';

export const linearityGerman = german(LINEARITY, {
  'apertures-needed':
    'Für die Linearität über die Zeit braucht es das Weiß bei zwei Zeiten oder mehr, etwa t, t/2, t/4 und t/8; messen Sie sie.',
  'channel-one': 'Kanal 1',
  'aperture-seen': '{channel} misst um {by} {way} bei {ms} ms',
  'aperture-good': 'Linear über die Zeit: höchstens {seen}, erlaubt sind {allowed}.',
  'aperture-bad':
    '{seen} als bei {ms} ms, erlaubt sind {allowed}; bleiben Sie bei einer Zeit und suchen Sie nach Sättigung oder Streulicht.',
  'gain-seen': 'Verstärkung {to} gegen {from} weicht vom Nennschritt um bis zu {by} ab ({channel})',
  'gain-good': 'Gemessen: {seen}; messen Sie Weiß und Muster trotzdem mit einer Verstärkung.',
  'gain-bad':
    'Nicht behalten: {seen}, mehr als ein Verstärkungsschritt haben sollte; sehen Sie nach, dass sich nichts bewegt hat und kein Kanal voll ist, und messen Sie noch einmal.',
  'heights-needed': 'Die Abhebeprobe braucht zwei Höhen oder mehr, etwa 0, 0,1 und 0,2 mm Unterlage.',
  'lift-seen': '0,1 mm Abheben ändert {channel} um {by}',
  'lift-good': 'Abheben macht wenig aus: {seen}, erlaubt sind {allowed}.',
  'lift-bad':
    '{seen}, erlaubt sind {allowed}; setzen Sie den Kopf auf einen ebenen Ring, und unterlegen Sie die Weißkachel auf die Höhe eines nassen Films.',
  channel: 'Kanal {number}',
  'lamp-channels': 'Die drei Lampenmessungen haben verschiedene Kanäle; messen Sie alle drei noch einmal.',
  'lamps-good':
    'Linear: zwei Lampen einzeln messen um {by} {way} als beide zusammen in {channel}, erlaubt sind {allowed}.',
  'lamps-bad':
    'Zwei Lampen einzeln messen um {by} {way} als beide zusammen in {channel}, erlaubt sind {allowed}; stellen Sie die Verstärkung kleiner, so dass das Weiß bei 60-80 % liegt, und prüfen Sie noch einmal.',
});
