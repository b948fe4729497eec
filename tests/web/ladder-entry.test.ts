import { describe, expect, it } from 'vitest';
import { parseLines } from '../../web/src/screens/ladder/typed-lines.ts';

describe('numbers pasted for a rung', () => {
  it('are refused by the line that cannot be read, and nothing of them is taken', () => {
    expect(() => parseLines('', 2, 2)).toThrow(/There are 0 lines; at least 2/);
    expect(() => parseLines('400 0.1', 2, 2)).toThrow(/There are 1 lines/);
    expect(() => parseLines('400 0.1\n410', 2, 2)).toThrow(/Line 2 reads “410”; 2 numbers/);
    expect(() => parseLines('400 0.1\n410 half', 2, 2)).toThrow(/Line 2 reads “410 half”/);
    expect(() => parseLines('410 0.1\n400 0.2', 2, 2)).toThrow(/Line 2: 400 nm does not follow/);
    expect(() => parseLines('400 0.1\n400 0.2', 2, 2)).toThrow(/rising order/);
  });

  it('are taken with decimal commas, semicolons, tabs and empty lines between', () => {
    expect(parseLines('400 0,112\n\n410;0,113\r\n420\t0.2\n', 2, 2)).toEqual([
      [400, 0.112],
      [410, 0.113],
      [420, 0.2],
    ]);
  });

  it('may be as irregular as the instrument was', () => {
    expect(parseLines('403.1 0.1\n415.6 0.2\n680 0.9', 2, 2).map((r) => r[0])).toEqual([403.1, 415.6, 680]);
  });
});
