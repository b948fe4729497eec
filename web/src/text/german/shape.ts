import { SHAPE } from '../../../../src/sentence/shape-sentences.ts';
import { german } from './german.ts';

export const shapeGerman = german(SHAPE, {
  missing: 'es fehlt',
  number: 'hier gehört eine Zahl hin',
  'whole-number': 'hier gehört eine ganze Zahl hin',
  text: 'hier gehört ein Text hin',
  'true-or-false': 'hier gehört true oder false hin',
  list: 'hier gehört eine Liste hin',
  object: 'hier gehört ein Objekt mit Einträgen hin',
  other: 'es hat nicht die Form, die hier gebraucht wird',
  'at-most': 'hier gehört eine Zahl von höchstens {limit} hin',
  'at-least': 'hier gehört eine Zahl von mindestens {limit} hin',
  below: 'hier gehört eine Zahl unter {limit} hin',
  above: 'hier gehört eine Zahl über {limit} hin',
  'multiple-of': 'hier gehört ein Vielfaches von {step} hin',
  'entries-most': 'hier gehören höchstens {limit} Einträge hin',
  'entries-least': 'hier gehören mindestens {limit} Einträge hin',
  'entries-exactly': 'hier gehören genau {limit} Einträge hin',
  'letters-most': 'hier gehören höchstens {limit} Zeichen hin',
  'letters-least': 'hier gehören mindestens {limit} Zeichen hin',
  'letters-exactly': 'hier gehören genau {limit} Zeichen hin',
  'one-of': 'hier gehört eines von {known} hin',
  exactly: 'hier gehört {wanted} hin und nichts anderes',
  date: 'hier gehört ein Datum wie 2026-05-31 hin',
  time: 'hier gehört ein Zeitpunkt wie 2026-05-31T09:30:00Z hin',
  unknown: 'einen Eintrag {names} gibt es hier nicht',
});
