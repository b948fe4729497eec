import { SwatchSetProblem } from '../../src/calibrate/swatch-set/problem.ts';
import type { Swatch } from '../../src/calibrate/swatch-set/schema.ts';
import { dryingShiftsIn } from '../../src/fit/drying-shift.ts';
import { doubtSources } from '../../src/fit/evidence/doubt-sources.ts';
import type { TubeFilm } from '../../src/fit/film-facts/tube-film.ts';
import { tubeFilm } from '../../src/fit/film-facts/tube-film.ts';
import { halfStrength, strengthPercent } from '../../src/fit/strength.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import type { TubeFacts } from '../api/tube-facts.ts';
import type { Bench } from '../bench.ts';
import { HttpProblem, notFound } from '../problem.ts';
import { profileIn } from '../routes/profiles.ts';
import { laddersOfTube } from '../store/ladders.ts';
import type { Db } from '../store/open-store.ts';
import { currentProfile } from '../store/profiles.ts';
import { tubeById, whiteOf } from '../store/tubes.ts';
import { assembleSet } from './assemble-set.ts';
import { usualForm } from './usual-form.ts';
import { say } from '../api/sentences/fitting.ts';

export interface FactsAsked {
  readonly micrometres?: number | undefined;
  readonly x?: number | undefined;
  readonly against?: string | undefined;
}

/**
 * What a tube does and how sure that is, by the current profile of its palette.
 * @throws HttpProblem 404 without constants; RangeError for a film or a tube that cannot be told of
 */
export function tubeFacts(bench: Bench, tubeId: string, asked: FactsAsked): TubeFacts {
  const { db } = bench;
  const row = tubeById(db, tubeId);
  if (!row) throw notFound(say('no-tube', { id: tubeId }));
  const stored = currentProfile(db, row.palette_id);
  const profile = stored && profileIn(stored);
  const tube = profile?.tubes.find((t) => t.id === tubeId);
  if (!stored || !profile || !tube) {
    throw notFound(say('no-constants', { tube: row.label }));
  }
  const palette = paletteOf(profile);
  const coloured = tubeId !== profile.white;
  const { micrometres, x, against } = asked;
  const at = micrometres === undefined ? (x === undefined ? undefined : { X: x }) : { micrometres };
  const { words, ...doubt } = doubtSources(palette, tubeId);
  return {
    tubeId,
    profileId: stored.id,
    film: filmView(
      tubeFilm(
        palette,
        tube,
        profile.tubes.find((t) => t.id === profile.white)!,
        {
          at,
          perMicrometre: profile.whiteScatteringPerMicrometre,
        },
      ),
    ),
    halfStrength: coloured ? halfStrengthOf(palette, tubeId) : null,
    strengthPercent: coloured && against !== undefined ? strengthPercent(palette, against, tubeId) : null,
    doubt: { ...doubt, sentence: words },
    drying: dryingOf(db, row.palette_id, tubeId),
  };
}

function filmView({ contrast, fullHiding, scattering, undertone }: TubeFilm): TubeFacts['film'] {
  const { scope, value, low, high, X, micrometres } = contrast;
  const { Y, iso6504, astmD2805 } = scope;
  return {
    contrast: { value, low, high, X, micrometres, Y, iso6504, astmD2805 },
    fullHiding: {
      X: { value: fullHiding.X, low: fullHiding.low, high: fullHiding.high },
      micrometres: fullHiding.micrometres,
    },
    scattering: scattering && { ...scattering, wavelengths: [...scattering.wavelengths] },
    undertone: {
      X: undertone.X,
      Lab: { L: undertone.lab.L, a: undertone.lab.a, b: undertone.lab.b },
      radius: undertone.radius,
    },
  };
}

/** Null where a paint is as light as the white: there is no middle. */
function halfStrengthOf(palette: Parameters<typeof halfStrength>[0], id: string): TubeFacts['halfStrength'] {
  try {
    const { parts, low, high } = halfStrength(palette, id);
    return { value: parts, low, high };
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** From the readings as they stand: a film read again needs no new fit to show its shift. */
function dryingOf(db: Db, paletteId: string, tubeId: string): TubeFacts['drying'] {
  let assembled: ReturnType<typeof assembleSet>;
  try {
    assembled = assembleSet(db, paletteId, usualForm(db, paletteId), { takesOpen: true });
  } catch (error) {
    // A profile from a file has no readings; readings that make no set tell no shift.
    if (error instanceof SwatchSetProblem || error instanceof HttpProblem) return [];
    throw error;
  }
  const { set, origins } = assembled;
  const ladders = new Set(laddersOfTube(db, tubeId).map((ladder) => ladder.id));
  const isWhite = whiteOf(db, paletteId)?.id === tubeId;
  const own = new Set(
    set.swatches
      .filter((swatch) => {
        const ladder = origins.get(swatch.id)?.ladder_id;
        if (ladder) return ladders.has(ladder);
        const used = tubesIn(swatch);
        return used.includes(tubeId) && (!isWhite || used.length === 1);
      })
      .map((swatch) => swatch.id),
  );
  return dryingShiftsIn(set)
    .filter((shift) => own.has(shift.id))
    .map(({ id, words, wet, dry, ...shift }) => {
      const origin = origins.get(id);
      return {
        name: origin?.name ?? id,
        rungId: origin?.kind === 'rung' ? origin.id : null,
        ...shift,
        wet: { L: wet.L, a: wet.a, b: wet.b },
        dry: { L: dry.L, a: dry.a, b: dry.b },
        sentence: words,
      };
    });
}

function tubesIn({ masses = {}, made = [] }: Swatch): string[] {
  return [
    ...Object.keys(masses).filter((id) => masses[id]! > 0),
    ...made.flatMap((part) => ('tube' in part ? part.tube : [])),
  ];
}
