import { GRID_NM, GRID_SIZE } from '../colour/grid.ts';
import { ProfileProblem } from './problem.ts';
import { type PaletteProfile, profileSchema } from './schema.ts';

/**
 * Reads a palette profile, version 1, from a parsed JSON document or its text. Members this version does not know
 * are kept, so that `readProfile(writeProfile(p))` loses nothing.
 * @throws ProfileProblem with one sentence and the place in the document.
 */
export function readProfile(input: unknown): PaletteProfile {
  const document = typeof input === 'string' ? parse(input) : input;
  refuseOtherKinds(document);
  const result = profileSchema.safeParse(document);
  if (!result.success) {
    const issue = result.error.issues[0]!;
    const at = place(issue.path);
    throw new ProfileProblem(
      `The profile's ${at || 'document'} cannot be read: ${issue.message}; mend it or export the profile again.`,
      at,
    );
  }
  holdCrossRules(result.data);
  return result.data;
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    throw new ProfileProblem(
      `The file is not JSON (${(error as Error).message}); a palette profile is a JSON document, so choose another file.`,
    );
  }
}

function refuseOtherKinds(document: unknown): void {
  if (typeof document !== 'object' || document === null || Array.isArray(document)) {
    throw new ProfileProblem(
      'A palette profile is a JSON object; something else was given, so choose another file.',
    );
  }
  const { format, version } = document as { format?: unknown; version?: unknown };
  if (format !== 'palette-profile') {
    throw new ProfileProblem(
      `The document says format ${JSON.stringify(format) ?? 'nothing'}; a palette profile says "palette-profile". ` +
        'A swatch set is fitted first, which gives a profile.',
      'format',
    );
  }
  if (version !== 1) {
    throw new ProfileProblem(
      `The profile is version ${JSON.stringify(version) ?? 'unknown'}; this program reads version 1. Use a newer program or export it again.`,
      'version',
    );
  }
}

/** The rules JSON Schema cannot hold; listed in docs/profile-format.md. */
function holdCrossRules(profile: PaletteProfile): void {
  profile.wavelengths.forEach((nm, i) => {
    if (nm !== GRID_NM[i]) {
      throw new ProfileProblem(
        `Wavelength ${i + 1} of the profile is ${nm} nm; version 1 is on 380 to 730 nm in 10 nm steps, so resample it.`,
        `wavelengths[${i}]`,
      );
    }
  });
  const seen = new Set<string>();
  const sharedColumns = profile.tubes[0]!.covariance.shared.length;
  profile.tubes.forEach((tube, t) => {
    const at = `tubes[${t}]`;
    if (seen.has(tube.id)) {
      throw new ProfileProblem(`Two tubes have the id "${tube.id}"; give each tube its own.`, `${at}.id`);
    }
    seen.add(tube.id);
    for (const name of ['K', 'S'] as const) {
      const bad = tube[name].findIndex((v) => !(v > 0));
      if (bad >= 0) {
        throw new ProfileProblem(
          `${name} of "${tube.label}" is ${tube[name][bad]} at ${GRID_NM[bad]} nm; K and S are above zero, so fit the tube again.`,
          `${at}.${name}[${bad}]`,
        );
      }
    }
    if (tube.covariance.shared.length !== sharedColumns) {
      throw new ProfileProblem(
        `"${tube.label}" has ${tube.covariance.shared.length} shared covariance columns where the first tube has ${sharedColumns}; they are one set for the whole profile.`,
        `${at}.covariance.shared`,
      );
    }
  });
  if (!seen.has(profile.white)) {
    throw new ProfileProblem(
      `The profile names "${profile.white}" as its white and has no such tube; name one of ${[...seen].join(', ')}.`,
      'white',
    );
  }
  if (profile.surface.form === '45/0' && profile.surface.escape === undefined) {
    throw new ProfileProblem(
      'A 45/0 surface needs its escape constant; export the profile again.',
      'surface.escape',
    );
  }
  if (profile.discrepancy.sdLnKS.length !== GRID_SIZE || profile.discrepancy.sdLnKS.some((v) => v < 0)) {
    throw new ProfileProblem(
      'The discrepancy is 36 numbers, none below zero; fit again.',
      'discrepancy.sdLnKS',
    );
  }
}

function place(path: PropertyKey[]): string {
  return path.map((p, i) => (typeof p === 'number' ? `[${p}]` : `${i ? '.' : ''}${String(p)}`)).join('');
}
