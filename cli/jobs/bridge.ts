import { bridgeFromSet } from '../../src/profile/merge/bridge.ts';
import type { Bridge } from '../../src/profile/merge/bridge-type.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import { readSet } from '../input.ts';

/** The bridge in a swatch set between the whites of two profiles. */
export function bridgeFrom(
  file: string,
  first: PaletteProfile,
  second: PaletteProfile,
  secondWhite: string | undefined,
): Bridge {
  return bridgeFromSet(
    readSet(file),
    paletteOf(first),
    paletteOf(second),
    secondWhite ? { second: secondWhite } : {},
  );
}
