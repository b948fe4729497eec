/** What was done on a ladder, and what cannot be. */
import { type Say, catalogue } from '../../../src/sentence/catalogue.ts';

export const LADDERS = catalogue('ladders', {
  'no-rung': 'The ladder has no rung "{id}"; fetch the ladder again.',
  'put-aside': 'This ladder was put aside; start a new one for the tube.',
  pours: 'The {rung:said} is made of {pours} pours and {masses} masses were given; enter one for each.',
  'pulled-after':
    'The {rung:said} was read on {read} and cannot have been drawn down on {pulled}; give that day or an earlier one.',
  'no-reading': 'The ladder has no reading "{id}"; fetch the ladder again.',
  undone: 'This reading was undone; redo it before you decide about it.',
  'nothing-to-undo': 'There is nothing to undo on this ladder.',
  'nothing-to-redo': 'There is nothing to do again on this ladder.',
  weighing: 'weighing of the {rung:said}',
  reading: 'reading {number} of the {rung:said}',
  'no-ladder': 'There is no ladder "{id}"; open the Rack and choose a tube.',
  'close-block':
    'All rungs are read; read the white tile once more: it closes the block of the last {count} {readings:word}.',
  'no-tube': 'There is no tube "{id}"; choose one on the Rack.',
  'no-white':
    'The palette has no white yet, and tints are made with it; name one tube as the white on the Rack.',
  'has-ladder': '"{tube}" already has a ladder; go on with it, or put it aside before you start another.',
  'no-card-films': 'This ladder has no films over a card; start one with card films to read it.',
  'press-failed': 'The program failed at this press; read once more.',
  'wrong-way-round':
    'The {rung:said} reads as if its two masses were noted the wrong way round; exchange them if that is what was poured, and fit again.',
  keeping: 'keeping {reading:said}',
  'sending-back': 'sending back {reading:said}',
});
export const say: Say<typeof LADDERS.templates> = LADDERS.say;
