import { LADDER } from '../../../../src/calibrate/ladder/sentences.ts';
import { german } from './german.ts';

export const ladderGerman = german(LADDER, {
  weigh: '{rung} wägen',
  'weigh-how':
    'Jeden Teil abwägen, eintragen, was die Waage zeigt, mischen, bis keine Schliere bleibt, und aufziehen.',
  'plug-in': 'Den Kopf anstecken',
  'ladder-waits': 'Die Leiter wartet, wo sie war; jede Messung ist behalten.',
  'set-head': 'Den Kopf stellen',
  'read-white': 'Die Weißkachel messen',
  'fit-tube': 'Diese Tube anpassen',
  'fit-how': 'Alle Sprossen sind gemessen; rechnen Sie ihre Konstanten aus.',
  'measure-more': 'Noch mehr messen',
  done: 'Die Leiter ist vollständig und angepasst.',
  'read-card': 'Die leere Karte messen, {side}',
  'read-card-how': 'Noch {count}; bleiben Sie vom Rand des Films weg.',
  'read-rung': '{rung} messen',
  'read-rung-over': '{rung} messen, über {side}',
  'scale-step': 'Schritt der Waage',
  'smallest-pour': 'kleinste Menge',
  'paint-per-rung': 'Farbe je Sprosse',
  'grams-above-zero': '{what}: {grams} g; geben Sie eine Zahl über null.',
  'wanted-sigma': 'Der gewünschte Fehler des Verhältnisses ist {wanted}; erlaubt ist 0,05 % bis 20 %.',
  'no-parts': 'Eine Sprosse mit {parts} Teilen Weiß lässt sich nicht mischen; geben Sie null oder mehr.',
  'needs-masstone':
    'Eine Leiter braucht den Vollton: nur er sagt, wie die Farbe streut; nehmen Sie ihn dazu.',
  'rung-twice':
    'Die Sprosse {rung} ist zweimal genannt; lassen Sie eine weg und messen Sie die andere öfter.',
  takes: 'Braucht {tube} aus der Tube und {white} Weiß.',
  'least-sure':
    '{rung} ist am wenigsten sicher: das Verhältnis ist auf {sigma} genau, mit einer Waage, die {resolution} g zeigt.',
  'not-reached':
    'Die gewünschten {wanted} erreicht kein Haufen, der das Mischen lohnt; nehmen Sie eine feinere Waage, oder verdünnen Sie aus einer früheren Sprosse.',
  'let-down-first':
    'Manche Sprossen werden aus anderen verdünnt: mischen Sie diese zuerst, und wägen Sie vom Haufen, solange er frisch ist.',
  'most-wasteful': 'Der aufwendigste betrachtete Weg bräuchte {most}, dieser {this}.',
  'large-pile': '{rung} ist ein Haufen von {grams}; mit einer Waage, die 0,001 g zeigt, wäre er kleiner.',
  'weigh-what-comes':
    'Wägen Sie, was wirklich herauskam, und tragen Sie das ein; jagen Sie nicht dem Sollwert nach.',
  'white-parts': 'Teile Weiß sind null oder mehr; gegeben wurde {parts}.',
  'reads-swapped':
    'Misst sich wie {reads}, eingetragen ist {entered}: Farbe und Weiß scheinen vertauscht; prüfen Sie die Massen.',
  'masses-swapped':
    '{paint} g Farbe auf {white} g Weiß ist {rung} verkehrt herum; tauschen Sie die beiden, wenn es so gewogen wurde.',
});
