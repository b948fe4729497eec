import { TILE } from '../../../../src/calibrate/tile/sentences.ts';
import { german } from './german.ts';

export const tileGerman = german(TILE, {
  'few-sessions': ' (Grenzen aus erst {count} Sitzungen)',
  'as-before': 'Die Prüfkachel misst sich wie in den {count} Sitzungen zuvor{soft}.',
  outside:
    'Die Prüfkachel misst sich außerhalb ihrer Grenzen in {names}; reinigen Sie Kachel, Öffnung und Weiß, stellen Sie den Kopf neu, und nehmen Sie keine Messungen, bis sie zurückkommt.',
  'outside-soft':
    'Die Prüfkachel misst sich außerhalb ihrer Grenzen in {names} (Grenzen aus erst {count} Sitzungen); reinigen Sie Kachel, Öffnung und Weiß, stellen Sie den Kopf neu, und nehmen Sie keine Messungen, bis sie zurückkommt.',
  'outside-by':
    'Die Prüfkachel misst sich außerhalb ihrer Grenzen in {names}, um {by}{soft}; reinigen Sie Kachel, Öffnung und Weiß, stellen Sie den Kopf neu, und nehmen Sie keine Messungen, bis sie zurückkommt.',
  'too-few':
    'Grenzen für die Prüfkachel brauchen {wanted} Sitzungen; es sind {count}. Messen Sie sie weiter in jeder Sitzung.',
  probability: 'Gebraucht wird eine Wahrscheinlichkeit zwischen 0 und 1; gegeben wurde {p}.',
  placings:
    'Eigene Werte einer Kachel brauchen drei Auflagen oder mehr; es sind {count}. Legen Sie neu auf und messen Sie noch einmal.',
  'tile-channels':
    'Die bekannte Kachel hat {channels} Kanäle und eine Messung eine andere Zahl; messen Sie noch einmal.',
});
