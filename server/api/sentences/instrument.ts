/** What the head on the bench needs next, and what its readings showed. */
import { type Say, catalogue } from '../../../src/sentence/catalogue.ts';

export const INSTRUMENT = catalogue('instrument', {
  'port-gone': 'The bench no longer uses this port; choose it again on the Bench.',
  'own-lamp-first':
    'The head’s own lamp was not read alone yet; switch the second light off and read that first.',
  'second-light-in':
    'Leave the head as it lies, let a steady second light in under its rim, such as a torch, and read with it on.',
  'second-light-weak':
    'The second light is only {percent:figure} % of the head’s own, and 10 % is the least that shows anything; bring it nearer and read again.',
  'second-light-away': 'Take the second light away.',
  'lift-begins': 'The lift test begins without a shim; lay the head on the tile and read height 0 first.',
  'shim-one': 'Put a shim of 0.1 mm under the head’s feet and read again.',
  'shim-two': 'A second shim, 0.2 mm in all, makes it surer; or take the shims away.',
  'shims-away': 'Take the shims away.',
  'trap-first': 'Room light is told from the black trap; read white tile and black trap at this gain first.',
  scatter:
    'One reading scatters by {sigma:figure} % of full reflectance and {relative:figure} % of itself, as its repeats show; a fit weighs readings by it.',
  'lowest-gain': 'Gain {gain:figure} is the lowest there is; set a higher one and test again.',
  'todo-dark': 'Cover the port and read the dark once, to see that no light gets in.',
  'todo-white': 'Lay the head on the white tile and read it.',
  'todo-trap': 'Lay the head on the black trap and read it: it takes the head’s own flare out.',
  'todo-check': 'Read the check tile: it tells when something has changed since last time.',
  'no-checksum':
    'This head sends no checksums, so a digit damaged on the cable can pass unseen; keep the cable short and read three times.',
  'no-trap': 'The black trap is not read, so dark colours read a little too light; read it when you can.',
  none: 'No instrument is connected.',
  looking: 'Looking for the head.',
  'plug-in-again': 'Plug the head in again: it is found by itself, and nothing read so far is lost.',
  'connect-one': 'Connect a head, use the practice instrument, or type readings in by hand.',
  ready: 'Ready: lay the head on a swatch and read.',
  'not-waited-for': 'The port is no longer waited for.',
  'gain-measured':
    'Gain {to:figure} is measured against {from:figure} on this head, so white and trap still hold; read the trap at this gain when you can, room light is told from it.',
  'white-first': 'The white tile is not read yet; read it on the Bench first.',
  'head-back': 'The head is back, and its lamp may be cold; read the white tile before you go on.',
  'head-restarted':
    'The head restarted by itself and its lamp is cold; read the white tile before you go on.',
  'press-set-aside': 'A press of the head’s button made before the change was set aside; press again.',
  busy: 'The head is reading; wait until it has finished.',
  lost: '{fault:said} It is found by itself once it is plugged in; everything read so far is kept.',
  'no-instrument': 'No instrument is connected; connect one on the Bench or type the reading in.',
  'something-on-usb': 'something on USB',
  'no-port': 'No port was found: plug the head in, or type its path, such as /dev/ttyACM0 or COM3.',
  'ports-found': '{count} {ports:word} found; choose the one the head is on.',
  'not-invented':
    'The practice instrument reads invented paints alone, and "{tube}" is not one; connect a real head or use the demo rack.',
  'lamp-warming': 'The lamp is still warming up; wait a minute before readings that count.',
  'dark-good': 'Dark: at most {percent:figure} % of full scale.',
  'dark-bad':
    'With the lamp off the head still sees {percent:figure} % of full scale, and 2 % is allowed; shade it and read the dark again.',
  'white-read': 'White tile read {times} times; it fills {percent} % of the scale.',
  'trap-read': 'Black trap read: the head’s own flare is taken out.',
  'white-before': 'The white tile is not read yet; read it, then the {what:said}.',
  'tile-numbers': 'The tile has {numbers} numbers and the head {channels} channels; give one per channel.',
  'tile-unknown':
    'The reflectance of the white tile is not known and is taken as 1; every reading is relative to it until you give its values.',
  'white-closes':
    '{read:said} It moved by {by:figure} since the white before, and {allowed:figure} is allowed; {many:said} between the two {are:word} worked out against both.',
  'block-sent-back': '{reason:said} {many:said} of that block {are:word} sent back.',
  'set-differently': 'The head was set differently before a white closed this block; read it again.',
  'read-white-first':
    '{reason:said} Read the white tile once more first: if it stays so, {many:said} will be sent back.',
  'connect-to-use': 'Connect a head to use it.',
  'values-for': 'Its values are for {head}; read it anew with this head.',
  span: '{low:figure} to {high:figure}',
  'head-sees': 'This head sees {span:said}.',
  'no-tile': 'There is no such tile; it may have been put away.',
  'tile-of-other': '"{tile}" was read with {head}; read it anew with this head.',
  'sheet-colour':
    'A tile’s sheet gives its reflectance by wavelength; this one gives a colour, so type one number in.',
  'sheet-range':
    'The sheet says {value:figure} somewhere, and a white tile lies between 0.2 and 1.1; see whether it is in per cent or of another tile.',
  'set-on-unknown':
    'The head is set on a tile of unknown values, so nothing can be told of another one; enter that tile’s values and read it first.',
  'placings-left': '{count} of {least} placings; lift the tile, put it down again and read.',
  placings: '{count} placings; name the tile and keep it, or place it again to be surer.',
  'no-instrument-tile': 'No instrument is connected; connect one on the Bench, then read the tile.',
  'practice-not-in-use':
    'The practice head is not in use; press the button of the head that is, or start the practice instrument.',
});
export const say: Say<typeof INSTRUMENT.templates> = INSTRUMENT.say;
