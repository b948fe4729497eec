/** Readings from a semicolon CSV in per cent to CxF3 text. Run: node --import tsx examples/convert-a-file.ts [readings.csv] */
import { readFileSync } from 'node:fs';
import { ExchangeProblem, readCsv, writeCxf } from 'tintladder';

const file = process.argv[2] ?? new URL('invented-readings.csv', import.meta.url);
try {
  const table = readCsv(readFileSync(file, 'utf8'), { geometry: '45/0' });
  for (const { sentence } of table.assumptions) console.error(`Assumed: ${sentence}`);
  const { text, notHeld } = writeCxf(table, new Date().toISOString());
  for (const sentence of notHeld) console.error(`Not carried over: ${sentence}`);
  console.log(text);
} catch (error) {
  if (!(error instanceof ExchangeProblem)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}
