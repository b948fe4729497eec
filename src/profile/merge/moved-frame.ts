import { type FrameDoubt, framedColumns } from '../../fit/frame-doubt.ts';
import type { Surface } from '../../fit/optics/surface.ts';
import type { MixingPalette } from '../../fit/palette.ts';

/** What a palette is to be read through. */
export interface ReadingFrame {
  readonly surface: Surface;
  /** Crowding of the palette's white; 0 where absent. */
  readonly crowding?: number;
}

/** A frame moved by one standard deviation of one shared number. */
export function movedFrame(
  { surface, crowding }: ReadingFrame,
  doubt: FrameDoubt,
  column: number,
): ReadingFrame {
  const by = (name: keyof FrameDoubt): number => doubt[name]?.[column] ?? 0;
  const { k1, k2, haze, escape } = surface;
  return {
    surface: {
      ...surface,
      k1: k1 + by('k1'),
      k2: k2 + by('k2'),
      haze: haze + by('haze'),
      ...(escape === undefined ? {} : { escape: escape + by('escape') }),
    },
    crowding: (crowding ?? 0) + by('crowding'),
  };
}

/**
 * The tubes as one shared number moves them: the frame, and every tube with it. Undefined where that number leaves the
 * frame alone.
 */
export function paletteMovedBy(palette: MixingPalette, column: number): MixingPalette | undefined {
  const { frameDoubt } = palette;
  if (!frameDoubt || !framedColumns(frameDoubt).includes(column)) return undefined;
  const { frameDoubt: _frame, ...steady } = palette;
  return {
    ...steady,
    ...movedFrame(palette, frameDoubt, column),
    tubes: palette.tubes.map((tube) => {
      const d = tube.shared[column]!;
      const half = tube.lnK.length;
      return {
        ...tube,
        lnK: tube.lnK.map((v, i) => v + d[i]!),
        lnS: tube.lnS.map((v, i) => v + d[half + i]!),
      };
    }),
  };
}
