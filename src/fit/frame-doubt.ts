/**
 * Constants mean something together with the surface and the white's crowding, their frame. What is doubtful about the
 * frame moves the constants with it, and a mixture by the sum of both: the shared columns hold the one, this the other.
 */
import { type MixtureConstants, crowdingFactor } from './mixture.ts';
import { surfaceInverse, surfaceMoved, surfaceSlope } from './optics/surface.ts';
import type { MixingPalette } from './palette.ts';

/** Constants of the frame that can be doubtful. */
export const FRAME_DOUBTS = ['k1', 'k2', 'escape', 'haze', 'crowding'] as const;

/** How each constant of the frame follows the shared numbers: one entry for each shared column. Absent is 0. */
export type FrameDoubt = { readonly [name in (typeof FRAME_DOUBTS)[number]]?: Float64Array };

/** Shared columns that move the frame. */
export function framedColumns(frame: FrameDoubt = {}): number[] {
  const width = Math.max(0, ...FRAME_DOUBTS.map((name) => frame[name]?.length ?? 0));
  return [...Array(width).keys()].filter((j) => FRAME_DOUBTS.some((name) => frame[name]?.[j]));
}

/** What is known of a film where its frame's slopes are asked for. */
export interface FilmSlopes extends MixtureConstants {
  readonly internal: Float64Array;
  /** d(measured)/dS of the mixture. */
  readonly dS: Float64Array;
  /** A finite film's card as it is read bare, and d(internal)/d(Rg). */
  readonly card?: { readonly measured: Float64Array; readonly dRg: Float64Array };
}

/**
 * By shared column, what the frame alone adds to a film's reading: the constants of the surface, where a card is read
 * through it as well, and the crowding of the white. Columns of 36.
 */
export function frameColumns(
  { frameDoubt, surface, white, crowding = 0 }: MixingPalette,
  { internal, dS, card, parts }: FilmSlopes,
): readonly (readonly [column: number, Float64Array])[] {
  const part = parts.find(({ id }) => id === white);
  return framedColumns(frameDoubt).map((j) => {
    const by = (name: (typeof FRAME_DOUBTS)[number]): number => frameDoubt![name]?.[j] ?? 0;
    const crowded = part ? (by('crowding') * (1 - part.share)) / crowdingFactor(crowding, part.share) : 0;
    const column = internal.map((R, i) => {
      let moved = surfaceMoved(surface, R, by);
      if (crowded) moved += dS[i]! * part!.S[i]! * crowded;
      if (!card) return moved;
      const Rg = surfaceInverse(surface, card.measured[i]!);
      const ground = surfaceMoved(surface, Rg, by) / surfaceSlope(surface, Rg);
      return moved - surfaceSlope(surface, R) * card.dRg[i]! * ground;
    });
    return [j, column] as const;
  });
}
