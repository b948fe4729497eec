import { GRID_NM } from '../colour/grid.ts';
import type { MixingPalette } from '../fit/palette.ts';
import type { PaletteFit, TubeFit } from '../fit/palette-fit.ts';
import type { PaletteProfile, ProfileTube } from './schema.ts';

/** What a fit does not know about itself and a profile states. */
export interface ProfileFacts {
  readonly title?: string;
  /** ISO 8601 with time zone; the core has no clock. */
  readonly created: string;
  readonly generator: { readonly name: string; readonly version: string };
  /** Which readings, settings and program this came from, for recomputing it. */
  readonly provenance?: Readonly<Record<string, unknown>>;
}

/** The profile of a fitted palette: constants, their covariance factor and what they rest on. */
export function profileFromFit(fit: PaletteFit, facts: ProfileFacts): PaletteProfile {
  const { palette, surfaceSds } = fit;
  const estimated = Object.keys(surfaceSds).length > 0;
  return {
    format: 'palette-profile',
    version: 1,
    ...(facts.title ? { title: facts.title } : {}),
    created: facts.created,
    generator: { ...facts.generator },
    basis: 'mass',
    wavelengths: [...GRID_NM],
    geometry: palette.geometry,
    surface: { ...palette.surface, ...(estimated ? { estimated: { ...surfaceSds } } : {}) },
    white: palette.white,
    tubes: fit.tubes.map((t) => tubeFrom(t, palette.white)),
    discrepancy: {
      sdLnKS: [...palette.discrepancy.sdLnKS],
      correlationNm: palette.discrepancy.correlationNm,
      ...(palette.discrepancy.sdHaze === undefined ? {} : { sdHaze: palette.discrepancy.sdHaze }),
    },
    ...(palette.crowding === undefined ? {} : { crowding: palette.crowding }),
    ...frameDoubtOf(palette),
    weighing: fit.weighing,
    noise: fit.noise,
    ...(fit.whiteScatteringPerMicrometre
      ? { whiteScatteringPerMicrometre: { ...fit.whiteScatteringPerMicrometre } }
      : {}),
    ...(facts.provenance ? { provenance: { ...facts.provenance } } : {}),
  };
}

/** The frame's doubt as a profile has it; nothing where it is known. */
export function frameDoubtOf({
  frameDoubt,
}: Pick<MixingPalette, 'frameDoubt'>): Pick<PaletteProfile, 'frameDoubt'> {
  if (!frameDoubt) return {};
  return { frameDoubt: Object.fromEntries(Object.entries(frameDoubt).map(([name, v]) => [name, [...v]])) };
}

function tubeFrom({ tube, constants, evidence }: TubeFit, white: string): ProfileTube {
  return {
    id: tube.id,
    label: tube.label ?? tube.id,
    pigments: [...(tube.pigments ?? [])],
    ...(tube.id === white ? { role: 'white' as const } : {}),
    ...(tube.density === undefined ? {} : { density: tube.density }),
    K: Array.from(constants.lnK, Math.exp),
    S: Array.from(constants.lnS, Math.exp),
    covariance: { own: constants.own.map((c) => [...c]), shared: constants.shared.map((c) => [...c]) },
    evidence: {
      ...evidence,
      rungs: evidence.rungs.map((r) => ({ ...r })),
      warnings: [...evidence.warnings],
    },
  };
}
