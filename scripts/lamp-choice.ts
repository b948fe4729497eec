/**
 * Prints what lamps of several types leave of an eight-band sensor's bands (hardware-notes/parts.md):
 * `node --import tsx scripts/lamp-choice.ts`. Lamps: CIE 15:2018 LED illuminants; bands: data-sheet nominals.
 */
import { readFileSync } from 'node:fs';
import { effectiveBands } from '../src/calibrate/bands/effective-bands.ts';
import { EIGHT_BANDS } from '../src/device/practice/sensor.ts';

const TABLE = new URL('../tests/fixtures/sensors/white_led_spd_5nm.csv', import.meta.url);
const LAMPS: readonly (readonly [string, string])[] = [
  ['CIE_LED-B3', 'blue-pumped, 4000 K'],
  ['CIE_LED-B5', 'blue-pumped, 6600 K'],
  ['CIE_LED-V1', 'violet-pumped, 2700 K'],
  ['CIE_LED-V2', 'violet-pumped, 4000 K'],
];

const [header, ...rows] = readFileSync(TABLE, 'utf8').trim().split(/\r?\n/);
const names = header!.split(',');
const column = (name: string): number[] => rows.map((row) => Number(row.split(',')[names.indexOf(name)]));
const wavelengths = column('wavelength_nm');
const filters = EIGHT_BANDS.map(([name, centreNm, fwhmNm]) => ({ name, centreNm, fwhmNm }));

console.log(`| lamp | ${EIGHT_BANDS.map(([name, centre]) => `${name} ${centre}`).join(' | ')} |`);
console.log(`| --- |${' ---: |'.repeat(EIGHT_BANDS.length)}`);
for (const [name, words] of LAMPS) {
  const bands = effectiveBands(filters, { wavelengths, values: column(name) });
  const cells = bands.map((band) => `${(100 * band.strength).toFixed(0)} %, ${band.centreNm.toFixed(0)}`);
  console.log(`| ${words} | ${cells.join(' | ')} |`);
}
