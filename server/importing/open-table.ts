import { readCgats } from '../../src/profile/exchange/cgats/read.ts';
import { readCsv } from '../../src/profile/exchange/csv/read.ts';
import { readCxf } from '../../src/profile/exchange/cxf/read.ts';
import type { ReadChoices, SpectralTable } from '../../src/profile/exchange/spectral-table.ts';

/** What a table's reader may be told; members left out are left open. */
export interface TableAnswers {
  readonly geometry?: ReadChoices['geometry'] | undefined;
  readonly scale?: ReadChoices['scale'] | undefined;
  readonly decimalComma?: boolean | undefined;
}

/**
 * A table of readings in one of the open formats, told apart by how the text begins: XML is CxF3, a keyword line of
 * CGATS.17 is CGATS.17, anything else is taken for CSV.
 * @throws ExchangeProblem with one sentence
 */
export function openTable(text: string, answers: TableAnswers = {}): SpectralTable {
  const { geometry, scale, decimalComma } = answers;
  const choices: ReadChoices = {
    ...(geometry ? { geometry } : {}),
    ...(scale ? { scale } : {}),
    ...(decimalComma === undefined ? {} : { decimalComma }),
  };
  const start = text.replace(/^\uFEFF/, '').trimStart();
  if (start.startsWith('<')) return readCxf(text, choices);
  return /^BEGIN_DATA(_FORMAT)?\s*$/m.test(text) ? readCgats(text, choices) : readCsv(text, choices);
}
