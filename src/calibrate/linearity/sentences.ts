/** What the tests of a head found, and why one could not be made. */
import { type Say, catalogue } from '../../sentence/catalogue.ts';

export const LINEARITY = catalogue('linearity', {
  'apertures-needed':
    'Linearity by aperture needs the white at two apertures or more, such as t, t/2, t/4 and t/8; read them.',
  'channel-one': 'channel 1',
  'aperture-seen': '{channel:said} reads {by:figure} {way:word} at {ms:figure} ms',
  'aperture-good': 'Linear in time: at most {seen:said}, within {allowed:figure}.',
  'aperture-bad':
    '{seen:said} than at {ms:figure} ms, and {allowed:figure} is allowed; keep to one aperture and look for saturation or leaking light.',
  'gain-seen':
    'gain {to:figure} against {from:figure} is off its nominal step by up to {by:figure} ({channel:said})',
  'gain-good': 'Measured: {seen:said}; read white and sample at one gain all the same.',
  'gain-bad':
    'Not kept: {seen:said}, more than a gain step should be; see that nothing moved and that no channel is full, and measure again.',
  'heights-needed': 'The lift test needs two heights or more, such as 0, 0.1 and 0.2 mm of shim.',
  'lift-seen': '0.1 mm of lift changes {channel:said} by {by:figure}',
  'lift-good': 'Lift does little: {seen:said}, within {allowed:figure}.',
  'lift-bad':
    '{seen:said}, and {allowed:figure} is allowed; seat the head on a flat ring, and shim the white tile to the height of a wet film.',
  channel: 'channel {number}',
  'lamp-channels': 'The three lamp readings have different channels; read all three again.',
  'lamps-good':
    'Linear: two lamps apart read {by:figure} {way:word} than both together in {channel:said}, within {allowed:figure}.',
  'lamps-bad':
    'Two lamps apart read {by:figure} {way:word} than both together in {channel:said}, and {allowed:figure} is allowed; lower the gain so that the white sits at 60-80 % and test again.',
});
export const say: Say<typeof LINEARITY.templates> = LINEARITY.say;
