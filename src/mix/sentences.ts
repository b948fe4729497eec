/** What a mix comes to, in words, and what was asked of the mixing room that it cannot do. */
import { type Say, catalogue } from '../sentence/catalogue.ts';

export const MIX = catalogue('mix', {
  'tubes-at-once': '{count} tubes cannot be added at once; give 1, 2 or 3.',
  'pile-near-enough': 'The pile is near enough as it is ({deltaE:figure}).',
  'nothing-nearer': 'Nothing added brings the pile nearer: {split:list}.',
  'nothing-weighable':
    'Nothing this scale can weigh brings the pile nearer: {list:list} would, and falls under the smallest pour of {smallest:figure} g. Add a weighed pinch of a pre-tint, or mix more of the pile first.',
  'grams-tube': '{grams:figure} g {tube}',
  'near-enough': 'near enough',
  still: 'still {split:list}',
  waste:
    ' That is more paint than mixing afresh takes; keep the pile of {grams:figure} g for something else.',
  add: 'Add {list:list}: {verdict:said} ({deltaE:figure}).{waste:said}',
  'pile-unknown':
    'Nothing is known of the pile; give the grams that went into it, or a reading of it and its grams.',
  'pile-grams': 'The pile weighs {grams:said}; weigh it and give the grams with its reading.',
  'nothing-known': 'nothing known',
  'no-pour-changes': 'no pour changes',
  kept: 'The colour is kept: {change:list}.',
  near: 'Nearly the colour, {deltaE:figure} left over ({split:list}): {change:list}.',
  'out-of-reach':
    'These tubes cannot give the colour any more: the nearest mix is off by {deltaE:figure} (CIEDE2000; {split:list}). Look for another recipe, or accept: {change:list}.',
  'grams-of': '{grams:figure} g of {tube}',
  'pour-none': 'no {tube} (was {was:said})',
  pour: '{grams:figure} g of {tube} (was {was:said})',
  'unknown-carried':
    'The palette has no tube "{id}"; both the old and the new tube are needed, and it has {known}.',
  'unknown-tube': 'The palette has no tube "{id}"; it has {known}.',
  'same-place': '"{tube}" is put in the place of two tubes; give each old tube its own.',
  clash:
    '"{tube}" is in the recipe already and takes another tube\'s place too; take it out of the recipe first.',
  'carried-grams': 'The carried mix is to weigh {grams:figure} g; give grams above 0.',
  'values-lost': 'The value of {list} cannot be kept with the new tube.',
  'steps-off':
    '{some} of {of} steps keep their value and not their colour (off by up to {most:figure} CIEDE2000).',
  'no-checks': 'The swatch set holds no checks; give one whose "checks" are mixtures never fitted.',
  'other-geometry':
    'The checks were read at {checks} and the profile is for {profile}; the two read different surfaces, so read the checks again with the profile’s geometry.',
  'film-thickness':
    "A film cannot be {thickness:figure} thick; give 0 or more, in units of the white's scattering or in micrometres.",
  'no-thickness-known':
    "This profile knows no film thickness, so micrometres mean nothing to it; read one drawdown of known thickness over black and white, or give the thickness in units of the white's scattering.",
  micrometres: 'A film of {um:figure} um cannot be; give 0 or more micrometres.',
  'with-itself': '"{tube}" mixed with itself stays as it is; name two tubes.',
  points: '{count} points cannot be laid between two tubes; give 3 to 1000.',
  'share-of': '{percent:figure} % {tube} by mass',
  'mixes-cleanly': '{one} and {two} mix cleanly: the dullest mix keeps chroma {chroma:figure}.',
  'kill-each-other':
    '{one} and {two} kill each other: at {at:said} chroma falls to {chroma:figure}, a grey of value {value:figure}.',
  'dull-each-other': '{one} and {two} dull each other: at {at:said} chroma falls to {chroma:figure}.',
  'one-grey': '{grey} is all but grey itself: it greys {other} and cannot muddy it.',
  'both-grey': '{one} and {two} are both all but grey: there is no chroma to lose.',
  nudge: '"{nudge}" is not a nudge; use {known}.',
  hues: '{count} hues cannot be gone round; give a whole number from 3 to 360.',
  value: 'Value {value:figure} is not on the scale; Munsell values run from 0 to 10.',
  'all-in-use': 'Every tube of the profile is already in use; choose fewer, or add a tube to the rack.',
  'too-far': 'too {way:word} by {by:figure}',
  'too-strong': 'too {way:word} by {by:figure}',
  'value-kept': 'value kept',
  'value-off': 'too {way:word} by {by:figure} of value',
  'all-kept': 'value, chroma and hue kept',
  count: '{what:said} is {value:figure}; give a whole number from 1 to {most}.',
  'most-tubes': 'The most tubes in a recipe',
  recipes: 'The number of recipes',
  amount: 'The amount of mix is {grams:figure} g and the tie {tie:figure}; give numbers above 0 for both.',
  'within-reach': 'Within reach of these tubes.',
  nearest: 'Out of reach of these tubes; the nearest mix: {split:list}.',
  'reading-size':
    'The reading has {numbers} numbers and its instrument {channels} channels; they must agree and be at least one.',
  'channel-weights': 'Channel {channel} has {weights} weights; the grid has {grid}.',
  'channel-reads': 'Channel {channel} reads {value:figure}; give reflectance factors from 0 to about 1.',
  lab: 'L* {L:figure}, a* {a:figure}, b* {b:figure} under {white}',
  'wanted-not-a-number':
    'The wanted colour {lab:said} holds something that is not a number; give three numbers.',
  'wanted-lightness': "The wanted colour {lab:said} is no surface's: L* runs from 0 (black) to 100 (white).",
  'wanted-outside':
    'The wanted colour {lab:said} lies outside the spectrum locus, where no light is; check the numbers and their signs.',
  'wanted-reflectance':
    'The wanted reflectance is {value:figure} at sample {sample} of {of}; give factors from 0 to 1, not per cent.',
  priority: 'Priority "{priority}" is not known; use one of {known}.',
  'no-metamerism': 'A sample that reflects nothing has no metamerism; compare two colours that can be seen.',
  'too-little':
    '{grams:figure} g of mix cannot be poured when the smallest pour is {smallest:figure} g; ask for more, or name a finer scale.',
  'scale-steps': 'A scale cannot show steps of {grams:figure} g; give what it shows, such as 0.01.',
  'smallest-pour': 'The smallest pour is {grams:figure} g; give grams above 0, such as {such:figure}.',
  parts: '{parts} parts cannot be counted out; give a whole number from 1 to {most}.',
  'too-many-parts':
    '{parts} parts of {tubes} tubes are too many to count out; ask for fewer parts or a recipe of fewer tubes.',
  density:
    'Parts by volume need the density of every tube, and that of "{id}" is not known; enter it, or mix by mass.',
  stopped: 'The search was stopped before it was done; ask again to start it afresh.',
  'tube-size':
    'Tube "{id}" has {k} absorption and {s} scattering constants; {grid} of each are needed, so fit or import it again.',
  'tube-number':
    'Tube "{id}" has a constant that is not a number at sample {sample} of {of}; fit or import it again.',
  'no-tubes': 'The palette holds no tubes; measure or import at least one before mixing.',
  'all-left-out': 'Every tube was left out; choose at least one to mix with.',
  'same-id': 'Two tubes carry the id "{id}"; give each tube its own.',
  mass: 'The mass of "{id}" is {mass:figure}; give a number of grams, 0 or more.',
  'no-paint': 'The mixture holds no paint; give at least one mass above 0.',
  'highlight-warmth':
    'A highlight warmer by {warmth:figure} is not warm; give CIELAB units above 0, such as 3.',
  'no-highlight':
    'No tube of the palette warms the white by {warmth:figure}; ask for less, or add a warm tube.',
  'string-value':
    'Value {value:figure} is not on the scale; Munsell values run from 0 (black) to 10 (white).',
  'string-steps': 'A value string of {steps} steps cannot be laid out; give 2 to {most}.',
  'string-grams': 'Each step is to weigh {grams:figure} g; give grams above 0.',
  'string-lean': 'A lean of {lean:figure} is not a number; give CIELAB units, above 0 for warm.',
  'string-white': '"{tube}" is the white itself; name the tube that is to be let down with it.',
  'string-none':
    'No mix of these tubes has value {values:figure}; they go from {low:figure} to {high:figure}.',
  'string-others': 'Value {values:figure} takes other tubes than the rest of the string.',
  'string-off': 'At value {value:figure} the nearest is too {way:word} by {by:figure}.',
  'pre-tint-none':
    '{tube} falls under the smallest pour and is left out; let down with {light} it could not be weighed here either, so mix more, or name a finer scale.',
  'pre-tint-overdone':
    '{tube} falls under the smallest pour and is poured at the smallest, which shows; let down with {light} it could not be weighed here either, so mix more, or name a finer scale.',
  'pre-tint-not-worth':
    '{tube} falls under the smallest pour and is left out: a pre-tint of it would bring the mix nearer by no more than {gain:figure}.',
  'pre-tint-same': '{tube} falls under the smallest pour and is left out: without it the mix is as near.',
});
export const say: Say<typeof MIX.templates> = MIX.say;
