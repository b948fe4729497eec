/**
 * Prints what lamps of several types leave of an eight-band sensor's bands (hardware-notes/parts.md):
 * `node --import tsx scripts/lamp-choice.ts`. Lamps: CIE 15:2018 LED illuminants; bands: data-sheet nominals.
 */
import { readFileSync } from 'node:fs';
import { effectiveBands } from '../src/calibrate/bands/effective-bands.ts';

const TABLE = new URL('../tests/fixtures/sensors/white_led_spd_5nm.csv', import.meta.url);
const LAMPS: readonly (readonly [string, string])[] = [
  ['CIE_LED-B3', 'blue-pumped, 4000 K'],
  ['CIE_LED-B5', 'blue-pumped, 6600 K'],
  ['CIE_LED-V1', 'violet-pumped, 2700 K'],
  ['CIE_LED-V2', 'violet-pumped, 4000 K'],
];
const BANDS: readonly (readonly [string, number, number])[] = [
  ['F1', 415, 26],
  ['F2', 445, 30],
  ['F3', 480, 36],
  ['F4', 515, 39],
  ['F5', 555, 39],
  ['F6', 590, 40],
  ['F7', 630, 50],
  ['F8', 680, 52],
];

const [header, ...rows] = readFileSync(TABLE, 'utf8').trim().split(/\r?\n/);
const names = header!.split(',');
const column = (name: string): number[] => rows.map((row) => Number(row.split(',')[names.indexOf(name)]));
const wavelengths = column('wavelength_nm');
const filters = BANDS.map(([name, centreNm, fwhmNm]) => ({ name, centreNm, fwhmNm }));

console.log(`| lamp | ${BANDS.map(([name, centre]) => `${name} ${centre}`).join(' | ')} |`);
console.log(`| --- |${' ---: |'.repeat(BANDS.length)}`);
for (const [name, words] of LAMPS) {
  const bands = effectiveBands(filters, { wavelengths, values: column(name) });
  const cells = bands.map((band) => `${(100 * band.strength).toFixed(0)} %, ${band.centreNm.toFixed(0)}`);
  console.log(`| ${words} | ${cells.join(' | ')} |`);
}
