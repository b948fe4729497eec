import { REPEATS } from '../../../../src/calibrate/repeats/sentences.ts';
import { german } from './german.ts';

export const repeatsGerman = german(REPEATS, {
  'channels-differ': 'Messung {reading} hat {seen} Kanäle; {wanted} werden gebraucht.',
  'no-number': 'Messung {reading} geht zurück: keine Zahl in {channel}; messen Sie diese Stelle noch einmal.',
  'sent-back':
    'Messung {reading} geht zurück: {way} als die anderen{mostly}, {times}-mal die übliche Streuung, erlaubt ist 3; suchen Sie nach Staub, einem Grat oder einem gekippten Kopf und messen Sie diese Stelle noch einmal.',
  'mostly-in': ', vor allem in {channel}',
  'mean-of-none': 'Eine mittlere Farbe braucht mindestens eine Farbe; es ist keine da.',
  'mean-of-whites':
    'Farben unter verschiedenem Weiß haben kein Mittel; rechnen Sie sie erst auf ein Weiß um.',
  'none-yet': 'Noch keine Messung; machen Sie {wanted}.',
  camps:
    'Die {readings} zerfallen in Lager, und keine ist als Ausreißer zu erkennen; messen Sie noch {more} Stellen.',
  'sent-back-count': ', {count} zurück',
  agree: '{have}: genug, sie sind sich einig.',
  scatter: '{have}, aber sie streuen {times}-mal so stark wie üblich; messen Sie noch {more} {spots}.',
  more: '{have}; messen Sie noch {more} {spots}.',
  'median-of-none': 'Ein Median braucht mindestens einen Wert; es ist keiner da.',
  'noise-from-repeats': 'Rauschen zeigt sich nur an Wiederholungen; messen Sie etwas zweimal oder öfter.',
  readings: '{count} {readings}',
  kept: '{readings}, die gelten{back}',
});
