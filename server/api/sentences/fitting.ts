/** How a fit goes, what it did without, and why none can be made. */
import { type Say, catalogue } from '../../../src/sentence/catalogue.ts';

export const FITTING = catalogue('fitting', {
  'read-again': 'Read again later, which tells the drying shift and is not averaged in: {names}.',
  'not-weighed': '{tube} {rung:said} was read and not weighed; enter its grams and fit again.',
  'card-missing':
    '{tube} {rung:said} over {side:word} was read and the bare {card:word} card was not; read the card and fit again.',
  'count-of': '{count:figure} of the {rung:said}',
  'waiting-for-white':
    '{tube}: readings that wait for the white that closes their block are left out ({readings:list}); read the white tile once more and fit again.',
  'all-sent-back':
    '{tube}: every reading of the {rungs:list} was sent back because the white moved; read it again and fit again.',
  fault: 'The fit stopped by a fault in the program; the readings are safe, and the log has the details.',
  'no-fit': 'There is no fit "{id}"; start one on the Constants screen.',
  running: 'A fit of this palette is running; wait for it or stop it.',
  'nothing-to-fit':
    'Nothing that was read can be fitted yet; read the masstone of the white and of one tube first.',
  'no-result': 'This fit has no result; start it again.',
  'reads-like': 'reads like {like:said}, not {weighed:said}',
  'reads-like-left-out': 'reads like {like:said}, not {weighed:said}, and was left out',
  'not-believed': 'was not believed and left out',
  fitting: 'Fitting {tubes} tubes from {swatches} swatches.',
  writing: 'Writing the profile.',
  'nothing-read': 'Nothing is read for this palette yet; read a ladder or import a swatch set first.',
  done: 'Done.',
  stopped: 'Stopped.',
  'program-stopped': 'The program was stopped while this fit ran; start it again.',
  'mend-rung':
    'The {rung:said} {reads:said}: mix and draw it down again, and weigh it on a finer scale if you can.',
  'few-rungs': 'This tube has {count} rungs; a masstone and tints of 1:1, 1:4 and 1:16 tell K from S.',
  'read-three-times': 'Read {rungs:list} three times: the noise is a guess otherwise.',
  'xyz-alone': 'Readings in XYZ alone leave the curves loose; a few bands or a spectrum would tighten them.',
  'no-tube': 'There is no tube "{id}"; choose one on the Rack.',
  'no-constants': '"{tube}" has no constants yet; read its ladder and fit it.',
});
export const say: Say<typeof FITTING.templates> = FITTING.say;
