/** What a check says of its prediction, and what it still waits for. */
import { type Say, catalogue } from '../../../src/sentence/catalogue.ts';

export const CHECKS = catalogue('checks', {
  'no-constants': 'This palette has no constants yet; fit its ladders to see a prediction.',
  'no-constants-for': 'The profile has no constants for {tubes}; fit again with its ladder.',
  'read-the-mixture': 'Read the mixture to compare it with its prediction.',
  'other-geometry':
    'It was read at {read} and the profile is for {profile}; read it with the head of the ladder.',
  'too-few-channels': 'The reading has too few channels for a colour; read it with more.',
  'from-prediction':
    '{reads:word} {deltaE:figure} CIEDE2000 from its prediction, {side:word} the 95 % region.',
  summary:
    '{count} checked: mean {mean:figure}, worst {worst:figure} CIEDE2000; {inside} of {of} inside their 95 % region.',
  'no-check': 'There is no check "{id}"; choose one on the Checks screen.',
  'no-paint': 'The mixture holds no paint; give at least one mass above 0.',
  'no-tube-in-palette': 'The palette has no tube "{id}"; choose tubes from the Rack.',
  'no-tube': 'There is no tube "{id}"; choose one on the Rack.',
});
export const say: Say<typeof CHECKS.templates> = CHECKS.say;
