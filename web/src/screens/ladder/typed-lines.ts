/** Pasted numbers, line by line, refused in one sentence where a line cannot be read. Nothing is guessed or skipped. */
import { ladderWords } from '../../text/ladder.ts';
import { num, parseNumber } from '../../text/numbers.ts';

/** One line's numbers: parted by blanks, tabs or semicolons, so that a decimal comma can stand. */
function cells(line: string): readonly (number | undefined)[] {
  return line
    .trim()
    .split(/[\s;]+/)
    .filter(Boolean)
    .map(parseNumber);
}

/**
 * @param wanted how many numbers a line has
 * @param least how many lines there must be
 * @throws Error with the sentence to show
 */
export function parseLines(text: string, wanted: number, least: number): readonly (readonly number[])[] {
  const t = ladderWords();
  const rows: (readonly number[])[] = [];
  for (const [i, line] of text.split(/\r?\n/).entries()) {
    if (line.trim() === '') continue;
    const row = cells(line);
    if (row.length !== wanted || row.some((v) => v === undefined)) {
      throw new Error(t.badLine(num(i + 1, 0), line.trim().slice(0, 60), num(wanted, 0)));
    }
    const before = rows.at(-1);
    if (before && wanted > 1 && row[0]! <= before[0]!) {
      throw new Error(t.notAscending(num(i + 1, 0), num(row[0]!, 0)));
    }
    rows.push(row as readonly number[]);
  }
  if (rows.length < least) throw new Error(t.tooFewLines(num(rows.length, 0), num(least, 0)));
  return rows;
}
