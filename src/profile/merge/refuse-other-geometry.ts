import { ProfileProblem } from '../problem.ts';
import type { PaletteProfile } from '../schema.ts';
import { say } from '../sentences.ts';

/** @throws ProfileProblem when the two were read at different geometries. */
export function refuseOtherGeometry(
  first: Pick<PaletteProfile, 'geometry'>,
  second: Pick<PaletteProfile, 'geometry'>,
): void {
  if (first.geometry !== second.geometry) {
    throw new ProfileProblem(
      say('other-geometry', { first: first.geometry, second: second.geometry }),
      'geometry',
    );
  }
}
