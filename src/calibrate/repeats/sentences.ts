/** Whether repeats of a reading agree, and which one is sent back. */
import { type Say, catalogue } from '../../sentence/catalogue.ts';

export const REPEATS = catalogue('repeats', {
  'channels-differ': 'Reading {reading} has {seen} channels; {wanted} are wanted.',
  'no-number': 'Reading {reading} is sent back: it has no number in {channel}; read that spot again.',
  'sent-back':
    'Reading {reading} is sent back: {way:said} than the others{mostly:said}, {times:figure} times the usual scatter where 3 is allowed; look for dust, a ridge or a tilted head, and read that spot again.',
  'mostly-in': ', mostly in {channel}',
  'mean-of-none': 'A mean colour needs at least one colour; none was given.',
  'mean-of-whites': 'Colours under different whites have no mean; convert them to one white first.',
  'none-yet': 'No reading yet; take {wanted}.',
  camps:
    'The {readings:said} fall into camps and none can be called the odd one out; read {more} more spots.',
  'sent-back-count': ', {count} sent back',
  agree: '{have:said}: enough, they agree.',
  scatter: '{have:said}, but they scatter {times:figure} times the usual; read {more} more {spots:word}.',
  more: '{have:said}; read {more} more {spots:word}.',
  'median-of-none': 'A median needs at least one value; none was given.',
  'noise-from-repeats': 'Noise is seen in repeats only; read something twice or more.',
  readings: '{count} {readings:word}',
  kept: '{readings:said} kept{back:said}',
});
export const say: Say<typeof REPEATS.templates> = REPEATS.say;
