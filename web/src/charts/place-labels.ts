/** A name beside a mark, and the mark it belongs to. */
export interface MarkedPlace {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

export interface PlacedLabel extends MarkedPlace {
  /** Where the text stands: its middle height, and its start, middle or end. */
  readonly at: { readonly x: number; readonly y: number };
  readonly anchor: 'start' | 'middle' | 'end';
  /** True where the text stands away from its mark, so that a line must lead to it. */
  readonly led: boolean;
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** About the width of a letter at 13 px, and the height a line of text takes. */
const LETTER = 7;
const LINE = 16;
/** From the middle of a mark to a text beside it; and further out, step by step. */
const BESIDE = 13;
const STEPS = [0, 14, 28, 42, 60, 80];
const MARK = 9;

const overlap = (p: Box, q: Box): number =>
  Math.max(0, Math.min(p.right, q.right) - Math.max(p.left, q.left)) *
  Math.max(0, Math.min(p.bottom, q.bottom) - Math.max(p.top, q.top));

/**
 * Puts names beside their marks so that no two lie over each other, nor over a mark, nor outside the picture: right of
 * the mark, left, under it, over it, then the same further off with a line. Where nothing is free the least bad is
 * taken. Marks are served in the order given.
 * `standing`: texts that are there already, by their middle.
 */
export function placeLabels(
  marks: readonly MarkedPlace[],
  width: number,
  height: number,
  standing: readonly MarkedPlace[] = [],
): PlacedLabel[] {
  const taken: Box[] = marks.map(({ x, y }) => ({
    left: x - MARK,
    right: x + MARK,
    top: y - MARK,
    bottom: y + MARK,
  }));
  for (const { x, y, text } of standing) {
    const half = (text.length * LETTER) / 2;
    taken.push({ left: x - half, right: x + half, top: y - LINE / 2, bottom: y + LINE / 2 });
  }
  return marks.map((mark, own) => {
    const wide = mark.text.length * LETTER;
    let best: { label: PlacedLabel; box: Box; bad: number } | undefined;
    for (const step of STEPS) {
      for (const [dx, dy, anchor] of [
        [BESIDE + step / 3, step === 0 ? 0 : -step, 'start'],
        [BESIDE + step / 3, step, 'start'],
        [-BESIDE - step / 3, step === 0 ? 0 : -step, 'end'],
        [-BESIDE - step / 3, step, 'end'],
        [0, BESIDE + LINE / 2 + step, 'middle'],
        [0, -BESIDE - LINE / 2 - step, 'middle'],
      ] as const) {
        const at = { x: mark.x + dx, y: mark.y + dy };
        const left = anchor === 'start' ? at.x : anchor === 'end' ? at.x - wide : at.x - wide / 2;
        const box: Box = { left, right: left + wide, top: at.y - LINE / 2, bottom: at.y + LINE / 2 };
        const outside =
          Math.max(0, -box.left) +
          Math.max(0, box.right - width) +
          Math.max(0, -box.top) +
          Math.max(0, box.bottom - height);
        const bad = taken.reduce(
          (sum, other, i) => sum + (i === own ? 0 : overlap(box, other)),
          1000 * outside,
        );
        if (!best || bad < best.bad) best = { label: { ...mark, at, anchor, led: step > 0 }, box, bad };
        if (bad === 0) break;
      }
      if (best?.bad === 0) break;
    }
    taken.push(best!.box);
    return best!.label;
  });
}
