/** Why a reading, a white or a dark was not taken, and how the lamp settles. */
import { type Say, catalogue } from '../../sentence/catalogue.ts';

export const READING = catalogue('reading', {
  'frame-channels': 'The frame has {counts} counts and the head {channels} channels; connect the head again.',
  'no-count': '{channels} gave no count; read again, and check the sensor if it stays so.',
  full: '{channels} {are:word} full ({fullScale:figure} counts); choose a lower gain or a shorter aperture and read dark, white and trap again.',
  settings: 'gain {gain:figure}, {ms:figure} ms',
  'settings-differ':
    '{what:said} was taken at {taken:said} and the reading at {reading:said}; take both with the same settings.',
  'the-dark': 'The dark',
  'the-white': 'The white',
  'lamp-state': 'The lamp was {how:said}; check the lamp and read again.',
  'on-for-dark': 'on for the dark',
  'off-for-reading': 'off for the reading',
  channel: 'channel {number}',
  'room-light':
    'Room light gets in: {share:figure} of the white in {channel:said} with the lamp off, and {allowed:figure} is allowed; seat the head flat on the swatch or shade it.',
  'light-got-in': '{share:figure} of the white gets in with the lamp off',
  'light-tight': 'Light-tight: {seen:said}, within {allowed:figure}.',
  'not-light-tight':
    'Not light-tight: {seen:said}, most in {channel:said}, and {allowed:figure} is allowed; seat the head flat or shade it.',
  'light-changed':
    'The light changed within this reading, so its bands do not belong together; keep the head still, shade it, and read again.',
  'warm-wait':
    'Leave the head on the white tile: {count} readings over {span:figure} show whether it has settled.',
  'warm-settled': 'Settled: the white moved by {by:figure} over {count} readings in {span:figure}.',
  'warm-moves':
    'The white moves again, by {by:figure} over {count} readings; wait until it settles, then read the white tile.',
  'warm-steady':
    'Steady so far ({by:figure}); {wanted} readings of the white over {span:figure} settle it, and there are {count} over {sofar:figure}.',
  'warm-settling':
    'Still settling: the white moved by {by:figure} over {count} readings, and {allowed:figure} is allowed; leave the lamp on.',
  'channel-counts':
    'The head has {head} channels, and reading, white, trap and tile have {sample}, {white}, {trap} and {tile}; set the head on its white and trap again.',
  'white-like-trap':
    '{channels} see{s:word} the white tile no better than the black trap; check the lamp and the port, then read white and trap again.',
  'darker-than-trap': 'darker than the black trap, so the trap was read with light or dust in it',
  'brighter-than-white': 'brighter than any white, so the white was read dark, dirty or lifted',
  implausible: '{channels} read{s:word} {seen:figure}, {why:said}; set the head on white and trap again.',
  'low-signal':
    'On the white tile {channels} {stay:word} under 1 % of full scale; raise the gain or the aperture so that the white sits at 60-80 %.',
  'white-order': 'The closing white is older than the opening one; read the white again.',
  'white-fell':
    'The white fell by {by:figure} in {channel:said} over this block, and {allowed:figure} is allowed; wipe the port, let the lamp settle, and read the block again.',
  'white-rose':
    'The white rose by {by:figure} in {channel:said} over this block, and {allowed:figure} is allowed; wipe the port, let the lamp settle, and read the block again.',
  'white-due-count': '{count} readings since the white; read the white tile again to close the block.',
  'white-due-age': 'The white is {minutes} minutes old; read the white tile again.',
  'white-due-warmth': 'The head is {by:figure} K {way:word} than at the white; read the white tile again.',
  'white-good': 'The white fills {percent} % of the scale in {channel:said}.',
  'change-aperture': '{way:word} the aperture',
  'change-gain': 'set the gain to {gain:figure}',
  'white-level':
    'The white fills {percent} % of the scale in {channel:said}, and 60-80 % is best; {advice:said}, then read dark, white and trap again.',
  'response-values': 'A response has {wavelengths} wavelengths and {values} values; give one value for each.',
  'response-negative': 'The response of {filter} is negative or no number somewhere; mend the table.',
  'response-blind': '{filter} sees nothing of this lamp between 300 and 830 nm; check its table.',
});
export const say: Say<typeof READING.templates> = READING.say;
