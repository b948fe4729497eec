/** What is wrong with a document, a body or a query that is not of the form asked for, at one place in it. */
import { type Say, catalogue } from './catalogue.ts';

export const SHAPE = catalogue('shape', {
  missing: 'it is missing',
  number: 'a number is wanted here',
  'whole-number': 'a whole number is wanted here',
  text: 'a text is wanted here',
  'true-or-false': 'true or false is wanted here',
  list: 'a list is wanted here',
  object: 'an object with members is wanted here',
  other: 'it is not of the form that is wanted here',
  'at-most': 'a number of at most {limit:figure} is wanted here',
  'at-least': 'a number of at least {limit:figure} is wanted here',
  below: 'a number below {limit:figure} is wanted here',
  above: 'a number above {limit:figure} is wanted here',
  'multiple-of': 'a multiple of {step:figure} is wanted here',
  'entries-most': 'at most {limit:figure} entries are wanted here',
  'entries-least': 'at least {limit:figure} entries are wanted here',
  'entries-exactly': 'exactly {limit:figure} entries are wanted here',
  'letters-most': 'at most {limit:figure} characters are wanted here',
  'letters-least': 'at least {limit:figure} characters are wanted here',
  'letters-exactly': 'exactly {limit:figure} characters are wanted here',
  'one-of': 'one of {known} is wanted here',
  exactly: '{wanted} is wanted here, and nothing else',
  date: 'a date such as 2026-05-31 is wanted here',
  time: 'a time such as 2026-05-31T09:30:00Z is wanted here',
  unknown: 'there is no member {names} here',
});
export const say: Say<typeof SHAPE.templates> = SHAPE.say;
