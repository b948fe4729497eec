import type { SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import { writeCgats } from '../../src/profile/exchange/cgats/write.ts';
import { writeCsv } from '../../src/profile/exchange/csv/write.ts';
import { writeCxf } from '../../src/profile/exchange/cxf/write.ts';
import { tableFromSwatchSet } from '../../src/profile/exchange/readings-table.ts';

/** A swatch set as the text of a file; docs/exchange.md says what each format holds. */
export function writtenReadings(
  set: SwatchSet,
  format: 'json' | 'csv' | 'cgats' | 'cxf',
  createdIso: string,
): { text: string; type: string; ending: string } {
  switch (format) {
    case 'json':
      return { text: `${JSON.stringify(set, null, 2)}\n`, type: 'application/json', ending: 'json' };
    case 'csv':
      return { text: writeCsv(tableFromSwatchSet(set)).text, type: 'text/csv', ending: 'csv' };
    case 'cgats':
      return { text: writeCgats(tableFromSwatchSet(set)).text, type: 'text/plain', ending: 'txt' };
    case 'cxf':
      return {
        text: writeCxf(tableFromSwatchSet(set), createdIso).text,
        type: 'application/xml',
        ending: 'cxf',
      };
  }
}
