/** What a file that somebody hands in lacks, and what was assumed about it. */
import { type Say, catalogue } from '../../../src/sentence/catalogue.ts';

export const IMPORTING = catalogue('importing', {
  'not-json': '"{file}" is not JSON ({cause}); choose a swatch set or a palette profile.',
  format:
    '"{file}" says format {format}; choose a swatch set ("swatch-set") or a palette profile ("palette-profile").',
  'geometry-by-you': 'The file does not say the geometry; you did.',
  'geometry-changed': 'The file says {said}; you changed it.',
  'white-by-you': 'You named the white the tints were made with.',
  'sidecar-unreadable': 'The JSON beside the CSV cannot be read; export the two again together.',
  'sidecar-other': 'The JSON beside the CSV is not what belongs to it; export the two again together.',
  'by-this-program': 'Written by this program.',
  'written-by': 'Written by {program}.',
  'geometry-note': 'The file notes on its geometry: {note}.',
  'weighing-assumed':
    'The file does not say how well the paint was weighed; ratios are taken as good to {percent:figure} %.',
  'from-repeats': 'from repeats',
  'noise-assumed': 'The file does not say how noisy a reading is; it is estimated from the repeats.',
  'no-label': '{count} of the tubes have no label; their id is shown in its place.',
  'in-no-swatch': '"{tube}" is in no swatch; it gets no constants.',
  'no-geometry':
    '"{file}" does not say how the instrument lit and looked; name the geometry, as the instrument\'s sheet has it.',
  'no-readings': '"{file}" holds no readings; choose another file.',
  'which-sample': '"{file}" holds {count} samples; name the one to take.',
  'no-sample': '"{file}" has no sample "{sample}"; choose one of those it holds.',
  'no-white':
    '"{file}" gives a colour without its illuminant and observer; type the three numbers in and name both.',
  'no-numbers': '"{file}" has no numbers for "{sample}"; choose another sample.',
});
export const say: Say<typeof IMPORTING.templates> = IMPORTING.say;
