import { readSwatchSet } from '../../src/calibrate/swatch-set/read.ts';
import type { SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import { profileFromTable } from '../../src/profile/exchange/constants-table.ts';
import { swatchSetFromTable } from '../../src/profile/exchange/readings-table.ts';
import type { Assumption } from '../../src/profile/exchange/spectral-table.ts';
import { readProfile } from '../../src/profile/read.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import { shapeSays } from '../../src/sentence/shape.ts';
import type { ImportRequest } from '../api/imports.ts';
import { unusable } from '../problem.ts';
import { openTable } from './open-table.ts';
import { say } from '../api/sentences/importing.ts';

export type OpenedFile =
  | { readonly kind: 'swatch set'; readonly set: SwatchSet; readonly answered: readonly Answered[] }
  | {
      readonly kind: 'palette profile';
      readonly profile: PaletteProfile;
      readonly answered?: readonly Answered[];
    };

/** Something the file did not say and the painter answered. */
export interface Answered {
  readonly member: 'geometry' | 'white' | 'scale' | 'decimalComma' | null;
  readonly sentence: string;
  readonly value: string;
}

/**
 * Opens a file somebody chose: a swatch set or a palette profile, told apart by what the document says it is. What a
 * swatch set leaves out is taken from the painter's own answers and from nothing else.
 * @param createdIso date of a profile that comes as a table without one
 * @throws HttpProblem, SwatchSetProblem or ProfileProblem with one sentence.
 */
export function openFile(
  request: Pick<ImportRequest, 'fileName' | 'text' | 'assume' | 'sidecar'>,
  createdIso: string,
): OpenedFile {
  let document: unknown;
  if (!/^[\uFEFF\s]*[[{]/.test(request.text)) {
    const table = openTable(request.text, { ...request.assume, sidecar: request.sidecar });
    if (table.rows.some((row) => row.quantity === 'K')) {
      const profile = readProfile(profileFromTable(table, createdIso));
      return { kind: 'palette profile', profile, answered: table.assumptions.map(fromAssumption) };
    }
    const set = swatchSetFromTable(table);
    return { kind: 'swatch set', set, answered: table.assumptions.map(fromAssumption) };
  }
  try {
    document = JSON.parse(request.text.replace(/^\uFEFF/, ''));
  } catch (error) {
    throw unusable(
      say('not-json', { file: request.fileName, cause: (error as Error).message.replace(/\s+/g, ' ') }),
    );
  }
  const format = isRecord(document) ? document['format'] : undefined;
  if (format === 'palette-profile')
    return { kind: 'palette profile', profile: readProfile(document, shapeSays) };
  if (format !== 'swatch-set' || !isRecord(document)) {
    throw unusable(
      say('format', { file: request.fileName, format: JSON.stringify(format) ?? 'nothing' }),
      'format',
    );
  }
  const answered: Answered[] = [];
  const { geometry, white } = request.assume ?? {};
  const instrument = document['instrument'];
  if (geometry !== undefined && isRecord(instrument) && instrument['geometry'] !== geometry) {
    const said = instrument['geometry'];
    document = { ...document, instrument: { ...instrument, geometry } };
    answered.push({
      member: 'geometry',
      value: geometry,
      sentence:
        said === undefined ? say('geometry-by-you') : say('geometry-changed', { said: JSON.stringify(said) }),
    });
  }
  if (white !== undefined && isRecord(document) && Array.isArray(document['tubes'])) {
    const tubes = (document['tubes'] as unknown[]).filter(isRecord);
    if (tubes.find((tube) => tube['role'] === 'white')?.['id'] !== white) {
      document = {
        ...document,
        tubes: tubes.map(({ role: _role, ...tube }) =>
          tube['id'] === white ? { ...tube, role: 'white' } : tube,
        ),
      };
      answered.push({
        member: 'white',
        value: white,
        sentence: say('white-by-you'),
      });
    }
  }
  return { kind: 'swatch set', set: readSwatchSet(document), answered };
}

function fromAssumption({ choice, sentence }: Assumption): Answered {
  return { member: choice === 'none' ? null : choice, sentence, value: '' };
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
