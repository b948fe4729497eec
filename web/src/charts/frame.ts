/** Where the plot lies inside a chart, in pixels. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Left edge (px) of this panel where a chart has several; 0 without. */
  readonly start?: number;
}

/** Below this width (px) margins and tick counts are those of a phone. */
export const NARROW = 480;

/**
 * A plot area with room for tick numbers on the left and below.
 * @param width of the whole chart, px; @param ratio height of the plot over its width; @param room beside the plot, px;
 *   `tall` is the height of the plot where it is not to follow its width: charts side by side end on one line.
 */
export function frameFor(
  width: number,
  ratio: number,
  room: { left?: number; right?: number; tall?: number } = {},
): Frame {
  const narrow = width < NARROW;
  const left = room.left ?? (narrow ? 44 : 56);
  const right = width - (room.right ?? (narrow ? 12 : 20));
  const top = 30;
  const plot = Math.min(460, Math.max(180, room.tall ?? (right - left) * ratio));
  return { width, height: top + plot + 46, left, right, top, bottom: top + plot };
}

/** Height of a plot of curves, px: the same for charts of one width, whatever room their labels take. */
export const curveHeight = (width: number): number => 0.46 * width;

/** Width of each of two panels beside each other, px; and of one where there is no room for two. */
export const panelWidth = (width: number): number => (width >= NARROW ? width / 2 - 12 : width);

/** A comfortable number of ticks for a length: one each 70 px, at least 3. */
export function tickCount(length: number): number {
  return Math.max(3, Math.round(length / 70));
}

/** The same frame elsewhere in the chart, for a second panel. */
export function shifted(f: Frame, dx: number, dy: number): Frame {
  return {
    ...f,
    start: (f.start ?? 0) + dx,
    left: f.left + dx,
    right: f.right + dx,
    top: f.top + dy,
    bottom: f.bottom + dy,
  };
}
