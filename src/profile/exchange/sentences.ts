/** Why a file from elsewhere cannot be taken, and what had to be assumed about it. */
import { type Say, catalogue } from '../../sentence/catalogue.ts';

export const EXCHANGE = catalogue('exchange', {
  columns: 'The data format names {count} columns; between 1 and {most} are read, so check the file.',
  'data-first': 'Data begin on line {line} before any data format; export the file again.',
  'no-begin-data':
    'No BEGIN_DATA was found; this is not a CGATS text file, so choose another or another format.',
  'cut-off': '{word} is missing: the file was cut off after line {line}; export it again.',
  'stated-count': '{name} says {stated}; {found} were found and read.',
  'mixed-signs':
    'The file mixes decimal points and commas between digits; say whether the commas are decimal commas.',
  commas: 'The numbers are written with commas; say whether they are decimal commas.',
  rows: 'The file has {rows} rows; up to {most} are read, so split it.',
  'line-values':
    'Line {line} has {count} values where the data format names {wanted}; mend the line and read the file again.',
  unquoted: 'Line {line}: "{name}" was read as one name, since it was not quoted.',
  'no-rows': 'The file has no data rows; export it again with its measurements.',
  'no-columns':
    'No spectral, Lab or XYZ columns were found among {fields}...; choose a file of measurements.',
  'row-at': 'row {row}, {column}',
  row: 'row {row}',
  'row-start': 'Row {row}',
  'open-quote':
    'A quoted text opens on line {line} and does not end there; close it and read the file again.',
  'written-as':
    '"{text}" was written as "{ascii}": CGATS text here is plain ASCII without double quotes or line breaks.',
  'evidence-in-json': 'The evidence of each tube (rungs, residuals, trust) stays in the JSON profile.',
  'provenance-in-json': 'Provenance, maker and batch stay in the JSON profile.',
  'scattering-in-json': 'Scattering per micrometre of film stays in the JSON profile.',
  'table-lacks':
    'The table does not say {what}; constants from elsewhere need it to be mixed, so ask for the JSON profile.',
  'no-constants': 'The table holds no K and S; it is a table of readings, so fit it first.',
  'no-scattering': 'Tube "{tube}" has K but no S; a tube needs both, so export it again.',
  'not-csv': 'The file cannot be read as CSV ({cause}); export it again as plain CSV.',
  empty: 'The file is empty; choose another.',
  size: 'The file has {rows} rows of {columns} columns; up to {mostRows} rows of {mostColumns} are read, so split it.',
  'mixed-decimals':
    'The file mixes decimal points and decimal commas; say whether the commas are decimal commas.',
  'cells-separated':
    'Cells are separated by another character, so commas between digits were read as decimal commas.',
  cell: 'row {row}, column {column}',
  sample: 'sample {number}',
  'one-column': 'Only one column was found; a reading needs wavelengths and values, so check the separator.',
  'wavelength-cell': 'row {row}, the wavelength column',
  'first-column':
    "The first column holds {outside} where wavelengths of 300 to 1100 nm belong; check the file's layout.",
  column: 'Column {number}',
  'no-cxf': 'The XML has no CxF element with content; choose a CxF3 file or another format.',
  objects: 'The file has {objects} objects; up to {most} are read, so split it.',
  'no-spectra': 'The file has no reflectance spectra or Lab values; export it with its measurements.',
  'not-well-formed': 'The file is not well-formed XML (line {line}: {cause}); export it again.',
  'not-xml': 'The file cannot be read as XML ({cause}); export it again.',
  entities:
    'The file declares a document type or entities, which CxF3 does not need; export it without them.',
  'too-deep': 'The file nests elements more than {depth} deep; CxF3 needs about 12, so it was not read.',
  'no-start': '"{name}" does not say at which wavelength its spectrum starts; add StartWL.',
  'step-taken': 'The step of the spectra was taken from their first and last wavelength: {nm:figure} nm.',
  'no-step':
    '"{name}" does not say the step of its spectrum; its colour specification needs a WavelengthRange.',
  'spectrum-of': 'the spectrum of "{name}"',
  'constants-left-out':
    'K, S and their covariance were left out: CxF3 core holds readings; use the JSON profile or CGATS for constants.',
  'lab-left-out': 'Lab and XYZ were left out{under:said}: they follow from the spectra that were written.',
  under: ' (under {white})',
  'odd-masses':
    '"{text}" stands where this program writes masses or facts of the set in braces; export the file again.',
  'response-in-json': "The instrument's own response curves stay in the JSON swatch set.",
  'truths-in-json': 'Noise-free truths of checks stay in the JSON swatch set.',
  'no-masses':
    'The file holds readings and does not say which tubes were weighed into each; enter the masses for each swatch.',
  'no-geometry':
    'The file does not say how the instrument lights and looks; name the geometry: 45/0 or d/8 with specular included or excluded.',
  'read-as-per-cent': 'The largest spectral number is {largest:figure}, so the file was read as per cent.',
  'read-as-fractions':
    'The largest spectral number is {largest:figure}, so the file was read as fractions of 1.',
  'which-scale':
    'The largest spectral number is {largest:figure}, which could be a dark paint as a fraction or a black one in per cent; say which.',
  'not-a-number': '"{text}" stands at {where:said}, where a number belongs; mend the file and read it again.',
  twice: '{where:said} gives {nm:figure} nm twice; keep one of the two.',
  characters: 'The file holds {count:figure} million characters; up to {most} million are read, so split it.',
  quantity:
    '"{text}" is the quantity at {where:said}; it is one of {known}, so mend it and read the file again.',
});
export const say: Say<typeof EXCHANGE.templates> = EXCHANGE.say;
