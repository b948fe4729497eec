/** Outside check: the real oil-paint ladders (CC0, Heritage Science 6:17) and the three invented sets go round. */
import { describe, expect, it } from 'vitest';
import { readSwatchSet } from '../../src/calibrate/swatch-set/read.ts';
import { readCgats } from '../../src/profile/exchange/cgats/read.ts';
import { writeCgats } from '../../src/profile/exchange/cgats/write.ts';
import { readCsv } from '../../src/profile/exchange/csv/read.ts';
import { writeCsv } from '../../src/profile/exchange/csv/write.ts';
import {
  notHeldFromSwatchSet,
  swatchSetFromTable,
  tableFromSwatchSet,
} from '../../src/profile/exchange/readings-table.ts';
import type { SpectralTable } from '../../src/profile/exchange/spectral-table.ts';
import { readJson } from '../fixtures/read-table.ts';

describe('a swatch set goes out and comes back with every reading', () => {
  it.each(['oil-ladders', 'transport-spectral', 'transport-bands', 'transport-xyz'])('%s', (name) => {
    const set = readSwatchSet(readJson(`paint/${name}.json`));
    const table = tableFromSwatchSet(set);
    const csv = writeCsv(table);
    const backs: [string, SpectralTable][] = [
      ['CGATS', readCgats(writeCgats(table).text, { scale: 'fraction' })],
      [
        'CSV',
        {
          ...readCsv(csv.text, { scale: 'fraction' }),
          ...(JSON.parse(csv.sidecar) as Partial<SpectralTable>),
        },
      ],
    ];
    for (const [format, back] of backs) {
      const again = swatchSetFromTable(back);
      expect(
        again.swatches.map((s) => [s.id, s.masses, s.film, s.backing, s.readings]),
        format,
      ).toEqual(set.swatches.map((s) => [s.id, s.masses, s.film, s.backing, s.readings]));
      expect(again.backings, format).toEqual(set.backings);
      expect(again.tubes, format).toEqual(set.tubes);
    }
  });

  it('says what stays behind: response curves and noise-free truths', () => {
    const set = readSwatchSet(readJson('paint/transport-bands.json'));
    expect(notHeldFromSwatchSet(set).join(' ')).toMatch(/response curves.*truths/);
  });
});
