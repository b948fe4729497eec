import { CHECKS } from '../../../../server/api/sentences/checks.ts';
import { german } from './german.ts';

export const checksGerman = german(CHECKS, {
  'no-constants':
    'Diese Palette hat noch keine Konstanten; passen Sie ihre Leitern an, dann gibt es eine Vorhersage.',
  'no-constants-for': 'Das Profil hat keine Konstanten für {tubes}; passen Sie mit ihrer Leiter neu an.',
  'read-the-mixture': 'Messen Sie die Mischung, um sie mit ihrer Vorhersage zu vergleichen.',
  'other-geometry':
    'Sie wurde bei {read} gemessen, und das Profil ist für {profile}; messen Sie sie mit dem Kopf der Leiter.',
  'too-few-channels': 'Die Messung hat zu wenige Kanäle für eine Farbe; messen Sie sie mit mehr.',
  'from-prediction': '{reads} {deltaE} CIEDE2000 von der Vorhersage entfernt, {side} des 95-%-Bereichs.',
  summary:
    '{count} geprüft: im Mittel {mean}, höchstens {worst} CIEDE2000; {inside} von {of} innerhalb ihres 95-%-Bereichs.',
  'no-check': 'Eine Probe „{id}“ gibt es nicht; wählen Sie eine auf der Seite Proben.',
  'no-paint': 'Die Mischung enthält keine Farbe; geben Sie mindestens eine Masse über 0.',
  'no-tube-in-palette': 'Die Palette hat keine Tube „{id}“; wählen Sie Tuben aus dem Regal.',
  'no-tube': 'Eine Tube „{id}“ gibt es nicht; wählen Sie eine im Regal.',
});
