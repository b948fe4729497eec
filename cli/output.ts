import { writeFileSync } from 'node:fs';
import { CommandProblem } from './problem.ts';

/** Where a command's answer goes; tests hand in their own. */
export interface Output {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

export const terminal: Output = {
  out: (text) => void process.stdout.write(text.endsWith('\n') ? text : `${text}\n`),
  err: (text) => void process.stderr.write(text.endsWith('\n') ? text : `${text}\n`),
};

export function printJson(output: Output, value: unknown): void {
  output.out(JSON.stringify(value, null, 2));
}

/** Columns under headings, numbers to the right. */
export function table(headings: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = headings.map((heading, c) => Math.max(heading.length, ...rows.map((row) => row[c]!.length)));
  const numeric = headings.map((_, c) => rows.every((row) => /^[-+]?[\d.]+( ?%)?$|^-?$/.test(row[c]!)));
  const line = (cells: readonly string[]): string =>
    cells
      .map((cell, c) => (numeric[c] ? cell.padStart(widths[c]!) : cell.padEnd(widths[c]!)))
      .join('  ')
      .trimEnd();
  return [line(headings), ...rows.map(line)].join('\n');
}

/** @throws CommandProblem when the file cannot be written */
export function writeOut(file: string, text: string, output: Output): void {
  if (file === '-') return output.out(text);
  try {
    writeFileSync(file, text);
  } catch (error) {
    throw new CommandProblem(
      `${file} cannot be written (${(error as Error).message}); choose another place with --output.`,
    );
  }
}
