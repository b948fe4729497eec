/** Why a palette profile cannot be taken. */
import { type Say, catalogue } from '../sentence/catalogue.ts';

export const PROFILE_FILE = catalogue('profile-file', {
  unreadable: "The profile's {at:said} cannot be read: {issue:said}; mend it or export the profile again.",
  'not-json': 'The file is not JSON ({cause}); a palette profile is a JSON document, so choose another file.',
  'not-an-object': 'A palette profile is a JSON object; something else was given, so choose another file.',
  format:
    'The document says format {format}; a palette profile says "palette-profile". A swatch set is fitted first, which gives a profile.',
  version:
    'The profile is version {version}; this program reads version 1. Use a newer program or export it again.',
  wavelength:
    'Wavelength {number} of the profile is {nm:figure} nm; version 1 is on 380 to 730 nm in 10 nm steps, so resample it.',
  'same-id': 'Two tubes have the id "{id}"; give each tube its own.',
  'not-above-zero':
    '{name} of "{tube}" is {value:figure} at {nm:figure} nm; K and S are above zero, so fit the tube again.',
  'shared-columns':
    '"{tube}" has {count} shared covariance columns where the first tube has {wanted}; they are one set for the whole profile.',
  'frame-doubt':
    "The frame's doubt in {name} has {count} entries where the tubes have {wanted} shared covariance columns; export the profile again.",
  'unknown-white': 'The profile names "{white}" as its white and has no such tube; name one of {known}.',
  'no-escape': 'A 45/0 surface needs its escape constant; export the profile again.',
  discrepancy: 'The discrepancy is 36 numbers, none below zero; fit again.',
});
export const say: Say<typeof PROFILE_FILE.templates> = PROFILE_FILE.say;
