/** What changes between two profiles or tubes, and what a merge or a replacement needs. */
import { type Say, catalogue } from '../sentence/catalogue.ts';

export const PROFILE = catalogue('profile', {
  'different-whites': 'The profiles rest on different whites ("{first}" and "{second}"): {what:said}.',
  'same-name-whites':
    'Both profiles call their white "{white}", and the two read {apart:figure} (CIEDE2000) apart, so they are not one paint: {what:said}.',
  differs: 'The {of:said} differs by {deltaE:figure} (CIEDE2000): {way:list}.',
  strength:
    "It is {way:word}: {percent} % of the old tube's tinting strength (give or take {sd:figure}), so use {use:word} of it.",
  hiding: 'It hides {way:word}: full hiding takes {times:figure} times the thickness.',
  'no-difference': 'No difference is larger than the doubt of the two measurements.',
  'stronger-in-colour': 'stronger in colour',
  'shade-apart': 'a shade apart',
  'other-readings':
    'The first readings are {first:word} at {firstGeometry}, the new ones {again:word} at {againGeometry}: read again as before.',
  'too-few-reread':
    '{count} swatch{were:word} re-read; three are needed (the white, a tint, a masstone) to tell the instrument from the paint.',
  holds: 'The palette holds: no swatch moved beyond the scatter of its readings.',
  moved:
    '{some} of {of} swatches moved beyond the scatter of their readings, the most by {most:figure} (CIEDE2000).',
  'same-way':
    'All of them went the same way in lightness, which points to the white tile or the instrument: clean the tile, calibrate and read again before doing anything else.',
  yellowed:
    'The white and its tints went yellow, as oil whites do in the dark: read the white again; daylight takes some of it back.',
  'not-seen': 'The change would not be seen side by side; read again in half a year.',
  'read-again': 'Read the ladders of the tubes that moved again before trusting new recipes.',
  'what-to-measure':
    'let one strong dark tube, such as a black, down 1:4 with each of the two whites, read both tints, the masstones of the dark tube and of both whites in one sitting, and give that swatch set as the bridge',
  'bridge-geometry':
    'The bridge was read at {bridge} and the profiles at {profiles}; read it with the geometry of the profiles.',
  'bridge-whites':
    'A bridge holds the first profile\'s white as its white and the second\'s as the tube "{second}"; this set has {seen}. Name the second white, or {what:said}.',
  'bridge-weak':
    'The bridge leaves the ratio of the two whites uncertain by {percent} %, more than {allowed} %: {what:said}.',
  'bridge-words': 'The second white scatters {percent} % as much as the first, give or take {sd} %.',
  'two-whites':
    'The profiles rest on two whites ("{first}" and "{second}") and nothing says how much each scatters: {what:said}.',
  'bridge-joins':
    'The bridge joins "{first}" and "{second}" at {at}, the profiles rest on "{profileFirst}" and "{profileSecond}" at {profileAt}: {what:said}.',
  'two-pigments':
    '"{tube}" is {first} in one profile and {second} in the other: these are two tubes. Merge with the same ids apart, or name the pigments right.',
  'two-tubes':
    'The two fits of "{tube}" disagree by {times} times their doubt: these are two tubes, or one was read wrong. Merge with the same ids apart, or look at both ladders.',
  'read-as-spectra': 'as spectra',
  'read-in-bands': 'in a few bands',
  'read-as-xyz': 'as XYZ',
  'read-somehow': 'by an instrument that is not named',
  'fits-agree': 'they agree within their doubt',
  'fits-disagree': 'they disagree by {times} times their doubt, so both are doubted that much more',
  combined: '"{tube}" is one tube fitted twice, read {first:said} and {second:said}: {how:said}.',
  renamed: '"{was}" of the second profile is called "{is}" now.',
  'white-moved':
    'The second white read {deltaE:figure} (CIEDE2000) otherwise in the bridge than in its own profile; check the calibration of the sittings.',
  crowding:
    'In mixes with the second white its scattering is taken at the middle of what its crowding allows (give or take {percent} %): only one white of a profile can crowd.',
  'other-geometry':
    'One profile was read at {first}, the other at {second}: read the new tubes with the old geometry.',
  'short-geometry':
    'The short ladder was read at {short}, the profile at {profile}: read the new tube with the old geometry.',
  'short-which': 'The short ladder holds {tubes:said}; name the one that is the new tube.',
  'only-white': 'no tube but the white',
  'a-tint': 'a tint',
  'the-masstone': 'the masstone',
  'short-lacks':
    'The short ladder lacks {missing:said} of "{tube}"; a new tube needs its masstone and one tint (1:4) with the profile\'s white.',
  'short-white':
    "The white of the short ladder reads {deltaE:figure} (CIEDE2000) from the profile's white: make the tint with the profile's white, or merge through a bridge.",
  unlike:
    'The new tube is unlike the old one, so its constants rest on its own short ladder alone. Pull a full ladder before trusting dark mixes.',
  'share-of-old': 'the old tube carries {percent} % of the result',
  'much-like': 'The new tube is much like the old one; {share:said}.',
  'usual-difference': 'The new tube differs as tubes of one pigment usually do; {share:said}.',
  'no-tube-to-replace': 'The profile has no tube "{id}" to replace; it has {known}.',
  'new-white':
    'Every constant is relative to the white, so a new white joins by a merge through a bridge: {what:said}.',
  'tube-there': 'The profile already has a tube "{id}"; give the new one another id.',
  'new-tube-columns':
    "The new tube has {count} shared covariance columns where the profile has {wanted}; fit it with the profile's white.",
  'white-otherwise':
    'The white read {deltaE:figure} (CIEDE2000) otherwise than the profile has it; calibrate and read it again if that is not its age.',
  'short-fit-stopped': 'The fit of the short ladder stopped: {message:said}',
});
export const say: Say<typeof PROFILE.templates> = PROFILE.say;
