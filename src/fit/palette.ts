import type { Geometry } from '../calibrate/swatch-set/schema.ts';
import type { Discrepancy, TubeConstants } from './constants.ts';
import type { FrameDoubt } from './frame-doubt.ts';
import type { Surface } from './optics/surface.ts';
import { say } from './palette-sentences.ts';

/** All that a mix needs: the tubes' constants, the surface they are read through, and what the equations miss. */
export interface MixingPalette {
  readonly tubes: readonly TubeConstants[];
  /** Id of the tube whose scattering is the unit of S. */
  readonly white: string;
  readonly geometry: Geometry;
  readonly surface: Surface;
  readonly discrepancy: Discrepancy;
  /**
   * Crowding of the white: in a mixture with a share c of white, a gram of white scatters 1 + crowding (1 - c) times
   * as much as in its masstone. Absent is 0. Use `mixtureConstants` of mixture.ts, which knows.
   */
  readonly crowding?: number;
  /** What the shared numbers do to surface and crowding, beside what they do to the tubes. Absent: nothing. */
  readonly frameDoubt?: FrameDoubt;
}

/**
 * A tube of the palette by its id.
 * @throws RangeError naming the tubes there are.
 */
export function tubeOf(palette: MixingPalette, id: string): TubeConstants {
  const tube = palette.tubes.find((t) => t.id === id);
  if (!tube) {
    throw new RangeError(say('unknown-tube', { id, known: knownTubes(palette.tubes) }));
  }
  return tube;
}

/** What a person calls a tube: its label, with its id where two tubes carry the same, or the id alone. */
export function labelOf(palette: Pick<MixingPalette, 'tubes'>, id: string): string {
  const label = palette.tubes.find((t) => t.id === id)?.label;
  if (!label) return id;
  return palette.tubes.some((t) => t.id !== id && t.label === label) ? `${label} (${id})` : label;
}

/** The tubes there are, for who named another: each by its label and the id that a command or a request takes. */
export function knownTubes(tubes: MixingPalette['tubes']): string {
  return tubes.map(({ id, label }) => (label && label !== id ? `${label} (${id})` : id)).join(', ');
}

/**
 * Masses in any unit as shares that sum to 1, without the zeros.
 * @throws RangeError for an unknown tube, a negative or not finite mass, or nothing at all.
 */
export function sharesOf(
  palette: MixingPalette,
  masses: Readonly<Record<string, number>>,
): { tube: TubeConstants; share: number }[] {
  let total = 0;
  const parts: { tube: TubeConstants; share: number }[] = [];
  for (const [id, mass] of Object.entries(masses)) {
    if (!(mass >= 0 && Number.isFinite(mass))) {
      throw new RangeError(say('mass', { id: labelOf(palette, id), mass }));
    }
    const tube = tubeOf(palette, id);
    if (mass === 0) continue;
    parts.push({ tube, share: mass });
    total += mass;
  }
  if (!(total > 0)) throw new RangeError(say('no-paint'));
  return parts.map(({ tube, share }) => ({ tube, share: share / total }));
}
