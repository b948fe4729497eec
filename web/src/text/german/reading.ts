import { READING } from '../../../../src/calibrate/reading/sentences.ts';
import { german } from './german.ts';

export const readingGerman = german(READING, {
  'frame-channels': 'Der Kopf schickte {counts} Zählwerte und hat {channels} Kanäle; verbinden Sie ihn neu.',
  'no-count':
    '{channels}: kein Zählwert; messen Sie noch einmal, und prüfen Sie den Sensor, wenn es so bleibt.',
  full: '{channels}: voll ({fullScale} Zählwerte); stellen Sie Verstärkung oder Zeit kleiner und messen Sie Dunkelwert, Weiß und Falle neu.',
  settings: 'Verstärkung {gain}, {ms} ms',
  'settings-differ':
    '{what} wurde mit {taken} gemessen und die Messung mit {reading}; beide brauchen dieselbe Einstellung.',
  'the-dark': 'Der Dunkelwert',
  'the-white': 'Das Weiß',
  'lamp-state': 'Die Lampe war {how}; prüfen Sie die Lampe und messen Sie noch einmal.',
  'on-for-dark': 'beim Dunkelwert an',
  'off-for-reading': 'bei der Messung aus',
  channel: 'Kanal {number}',
  'room-light':
    'Raumlicht dringt ein: ohne Lampe {share} des Weiß in {channel}, erlaubt sind {allowed}; setzen Sie den Kopf flach auf das Muster oder beschatten Sie ihn.',
  'light-got-in': 'ohne Lampe dringen {share} des Weiß ein',
  'light-tight': 'Lichtdicht: {seen}, erlaubt sind {allowed}.',
  'not-light-tight':
    'Nicht lichtdicht: {seen}, am meisten in {channel}, erlaubt sind {allowed}; setzen Sie den Kopf flach auf oder beschatten Sie ihn.',
  'light-changed':
    'Das Licht hat sich während der Messung geändert, ihre Bänder gehören nicht zusammen; halten Sie den Kopf still, beschatten Sie ihn und messen Sie noch einmal.',
  'warm-wait':
    'Lassen Sie den Kopf auf der Weißkachel: {count} Messungen über {span} zeigen, ob er zur Ruhe kam.',
  'warm-settled': 'Zur Ruhe gekommen: das Weiß ging in {span} über {count} Messungen um {by}.',
  'warm-moves':
    'Das Weiß bewegt sich wieder, um {by} über {count} Messungen; warten Sie, bis es ruht, und messen Sie die Weißkachel.',
  'warm-steady':
    'Bisher ruhig ({by}); sicher ist es nach {wanted} Messungen des Weiß über {span}, bisher sind es {count} über {sofar}.',
  'warm-settling':
    'Noch nicht ruhig: das Weiß ging über {count} Messungen um {by}, erlaubt sind {allowed}; lassen Sie die Lampe an.',
  'channel-counts':
    'Der Kopf hat {head} Kanäle; Messung, Weiß, Falle und Kachel haben {sample}, {white}, {trap} und {tile}; stellen Sie den Kopf neu auf Weiß und Falle.',
  'white-like-trap':
    '{channels}: Das Weiß ist hier nicht heller als die Schwarzfalle; prüfen Sie Lampe und Öffnung, dann messen Sie Weiß und Falle neu.',
  'darker-than-trap': 'dunkler als die Schwarzfalle: beim Messen der Falle war Licht oder Staub darin',
  'brighter-than-white': 'heller als jedes Weiß: das Weiß wurde dunkel, schmutzig oder abgehoben gemessen',
  implausible: '{channels}: {seen}, {why}; stellen Sie den Kopf neu auf Weiß und Falle.',
  'low-signal':
    '{channels}: auf der Weißkachel unter 1 % der Vollaussteuerung; stellen Sie Verstärkung oder Zeit größer, so dass das Weiß bei 60-80 % liegt.',
  'white-order': 'Das schließende Weiß ist älter als das öffnende; messen Sie das Weiß noch einmal.',
  'white-fell':
    'Das Weiß ist in {channel} um {by} gefallen, erlaubt sind {allowed}; wischen Sie die Öffnung ab, lassen Sie die Lampe zur Ruhe kommen und messen Sie alles seit dem Weiß noch einmal.',
  'white-rose':
    'Das Weiß ist in {channel} um {by} gestiegen, erlaubt sind {allowed}; wischen Sie die Öffnung ab, lassen Sie die Lampe zur Ruhe kommen und messen Sie alles seit dem Weiß noch einmal.',
  'white-due-count': '{count} Messungen seit dem Weiß; messen Sie die Weißkachel wieder.',
  'white-due-age': 'Das Weiß ist {minutes} Minuten alt; messen Sie die Weißkachel wieder.',
  'white-due-warmth': 'Der Kopf ist {by} K {way} als beim Weiß; messen Sie die Weißkachel wieder.',
  'white-good': 'Das Weiß füllt {percent} % der Skala in {channel}.',
  'change-aperture': 'die Zeit {way}',
  'change-gain': 'die Verstärkung auf {gain} stellen',
  'white-level':
    'Das Weiß füllt {percent} % der Skala in {channel}, am besten sind 60-80 %; {advice}, dann Dunkelwert, Weiß und Falle neu messen.',
  'response-values':
    'Eine Empfindlichkeit hat {wavelengths} Wellenlängen und {values} Werte; geben Sie für jede einen.',
  'response-negative':
    'Die Empfindlichkeit von {filter} ist irgendwo negativ oder keine Zahl; verbessern Sie die Tabelle.',
  'response-blind': '{filter} sieht zwischen 300 und 830 nm nichts von dieser Lampe; prüfen Sie die Tabelle.',
});
