/** What the check tile says, and a tile's own values. */
import { type Say, catalogue } from '../../sentence/catalogue.ts';

export const TILE = catalogue('tile', {
  'few-sessions': ' (limits from {count} sessions only)',
  'as-before': 'The check tile reads as in the {count} sessions before{soft:said}.',
  outside:
    'The check tile reads outside its limits in {names:list}; clean tile, port and white, set the head again, and do not use readings until it comes back.',
  'outside-soft':
    'The check tile reads outside its limits in {names:list} (limits from {count} sessions only); clean tile, port and white, set the head again, and do not use readings until it comes back.',
  'outside-by':
    'The check tile reads outside its limits in {names:list}, by {by:figure}{soft:said}; clean tile, port and white, set the head again, and do not use readings until it comes back.',
  'too-few':
    'Limits for the check tile need {wanted} sessions; there are {count}. Go on reading it each session.',
  probability: 'A probability between 0 and 1 is needed; {p:figure} was given.',
  placings: "A tile's own values need three placings or more; there are {count}. Place it and read again.",
  'tile-channels': 'The known tile has {channels} channels and a reading has another number; read again.',
});
export const say: Say<typeof TILE.templates> = TILE.say;
