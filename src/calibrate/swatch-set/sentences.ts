/** Why a swatch set cannot be taken. */
import { type Say, catalogue } from '../../sentence/catalogue.ts';

export const SWATCH_SET = catalogue('swatch-set', {
  'response-rows':
    "The instrument's response has {rows} rows and its readings {channels} channels; give one row per channel.",
  'response-row':
    "Row {row} of the instrument's response has {numbers} numbers for {wavelengths} wavelengths; give one per wavelength.",
  'response-sum':
    "Row {row} of the instrument's response sums to {sum:figure}; each row sums to 1, so divide it by its sum.",
  'not-ascending':
    'In {at}, {nm:figure} nm follows {before:figure} nm; wavelengths ascend, so sort them with their readings.',
  'unknown-tube':
    '"{by}" names tube "{id}", which is not among the tubes ({known}); add it or mend the name.',
  'unknown-swatch':
    '"{by}" is made from swatch "{id}", which is not in the document; add it or give the masses.',
  'made-from-itself':
    '"{id}" is made from itself by way of "{by}"; a chain of dilutions starts from tubes, so mend "made".',
  'masses-or-made': '"{id}" has {what:said}; give one of them.',
  'both-masses-and-made': 'both masses and made',
  'neither-masses-nor-made': 'neither masses nor made',
  'no-paint': '"{id}" holds no paint; give at least one mass above 0.',
  unreadable: '{what:said} cannot be read: {issue:said}; mend {at:said} and import it again.',
  'the-swatch-set': 'The swatch set',
  'the-document': 'the document',
  'not-json': 'The file is not JSON ({cause}); a swatch set is a JSON document, so choose another file.',
  'not-an-object': 'A swatch set is a JSON object; something else was given, so choose another file.',
  format: 'The document says format {format}; a swatch set says "swatch-set", so choose another file.',
  version:
    'The swatch set is version {version}; this program reads version 1, so use a newer program or write it as version 1.',
  'swatches-or-checks': 'swatches or checks',
  'the-backing': 'Backing "{id}"',
  'one-per-channel': 'one per channel',
  'two-whites': 'Tubes {tubes} both have the role of white; give it to the one the tints were made with.',
  'no-white': 'No tube has the role of white; give "role": "white" to the one the tints were made with.',
  'empty-check': 'Check "{id}" has neither readings nor truth; give one of them.',
  'one-per-wavelength': 'one per wavelength',
  'one-per-10-nm': 'one per 10 nm, 380 to 730 nm',
  'the-truth': 'The truth of check "{id}"',
  'same-id': 'Two {words:said} have the id "{id}"; give each its own.',
  numbers:
    '{who:said} has {count} numbers where {wanted} are needed, {what:said}; check the wavelengths it was read at.',
  'divide-by-100': 'it looks like per cent, so divide by 100',
  'read-again': 'read it again',
  'factor-range':
    '{who:said} reads {value:figure} in channel {channel}; a reflectance factor runs from 0 to a little over 1, and {advice:said}.',
  'the-reading': 'Reading {number} of {word:said} "{id}"',
  'unknown-first-reading':
    'Swatch "{id}" is said to be "{first}" read again, which is not an earlier swatch of the document; add it or mend the name.',
  'unknown-backing':
    '{word:said} "{id}" lies on backing "{backing}", which is not among the backings; add the bare card\'s reading.',
  'no-backing':
    '{word:said} "{id}" is a film of finite thickness without a backing; name the card it lies on, or call the film opaque.',
  'shared-drawdown':
    '"{other}" and "{id}" share drawdown "{drawdown}" and differ in mixture or thickness; one drawdown is one film, so give them two.',
  'white-masstone':
    'The white "{id}" has no masstone among the swatches; every tint is measured against it, so paint and read it by itself.',
  'tube-masstone':
    'Tube "{id}" has no masstone among the swatches (its strongest is {percent} %); only the masstone tells its scattering, so paint and read the paint by itself.',
});
export const say: Say<typeof SWATCH_SET.templates> = SWATCH_SET.say;
