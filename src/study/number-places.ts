/**
 * Where a family's number is written on the study: the pixel deepest inside its largest stretch, by the chessboard
 * distance transform of A. Rosenfeld and J. L. Pfaltz, "Sequential Operations in Digital Picture Processing", Journal of
 * the ACM 13 (1966) 471-494.
 */
export interface NumberPlace {
  readonly x: number;
  readonly y: number;
  /** Pixels from there to the family's edge. */
  readonly room: number;
}

/** One place per family, in their order. */
export function numberPlaces(of: Uint8Array, width: number, height: number, count: number): NumberPlace[] {
  const depth = new Int32Array(of.length);
  const other = (x: number, y: number, own: number): number =>
    x < 0 || y < 0 || x >= width || y >= height || of[y * width + x] !== own ? 0 : depth[y * width + x]!;
  const pass = (x: number, y: number, side: number): number => {
    const own = of[y * width + x]!;
    return (
      1 +
      Math.min(
        other(x - side, y, own),
        other(x - side, y - side, own),
        other(x, y - side, own),
        other(x + side, y - side, own),
      )
    );
  };
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) depth[y * width + x] = pass(x, y, 1);
  for (let y = height - 1; y >= 0; y--) {
    for (let x = width - 1; x >= 0; x--)
      depth[y * width + x] = Math.min(depth[y * width + x]!, pass(x, y, -1));
  }
  const best: NumberPlace[] = Array.from({ length: count }, () => ({ x: 0, y: 0, room: 0 }));
  depth.forEach((room, i) => {
    const own = of[i]!;
    if (room > best[own]!.room) best[own] = { x: i % width, y: Math.floor(i / width), room };
  });
  return best;
}
