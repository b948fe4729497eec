import { ExchangeProblem } from '../spectral-table.ts';
import { say } from '../sentences.ts';

/** A token of a CGATS text: a bare word or a quoted string, with the line it stands on. */
export interface Token {
  readonly text: string;
  readonly quoted: boolean;
  readonly line: number;
}

/** Splits into tokens by line. `#` starts a comment; either quote opens a string that must end on its line. */
export function cgatsTokens(text: string): Token[] {
  const tokens: Token[] = [];
  text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/)
    .forEach((line, i) => tokensOfLine(line, i + 1, tokens));
  return tokens;
}

function tokensOfLine(line: string, number: number, tokens: Token[]): void {
  let at = 0;
  while (at < line.length) {
    const c = line[at]!;
    if (/\s/.test(c)) at++;
    else if (c === '#') return;
    else if (c === '"' || c === "'") {
      const end = line.indexOf(c, at + 1);
      if (end < 0) {
        throw new ExchangeProblem(say('open-quote', { line: number }));
      }
      tokens.push({ text: line.slice(at + 1, end), quoted: true, line: number });
      at = end + 1;
    } else {
      let end = at;
      while (end < line.length && !/\s/.test(line[end]!)) end++;
      tokens.push({ text: line.slice(at, end), quoted: false, line: number });
      at = end;
    }
  }
}
