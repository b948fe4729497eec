import { ProfileProblem } from '../problem.ts';
import type { PaletteProfile } from '../schema.ts';

/** @throws ProfileProblem when the two were read at different geometries. */
export function refuseOtherGeometry(
  first: Pick<PaletteProfile, 'geometry'>,
  second: Pick<PaletteProfile, 'geometry'>,
): void {
  if (first.geometry !== second.geometry) {
    throw new ProfileProblem(
      `One profile was read at ${first.geometry}, the other at ${second.geometry}: read the new tubes with the old geometry.`,
      'geometry',
    );
  }
}
