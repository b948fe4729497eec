import { GRID_NM, GRID_SIZE } from '../colour/grid.ts';
import type { ShapeIssue } from '../sentence/shape.ts';
import { ProfileProblem } from './problem.ts';
import { type PaletteProfile, profileSchema } from './schema.ts';
import { say } from './read-sentences.ts';

/**
 * Reads a palette profile, version 1, from a parsed JSON document or its text. Members this version does not know
 * are kept, so that `readProfile(writeProfile(p))` loses nothing.
 * @param says what is wrong at a place that is not of the form; the schema library's own words without it, so that a
 *   program which reads profiles of its own making need not carry the sentences
 * @throws ProfileProblem with one sentence and the place in the document.
 */
export function readProfile(
  input: unknown,
  says: (issue: ShapeIssue) => string = ({ message }) => message,
): PaletteProfile {
  const document = typeof input === 'string' ? parse(input) : input;
  refuseOtherKinds(document);
  const result = profileSchema.safeParse(document);
  if (!result.success) {
    const issue = result.error.issues[0]!;
    const at = place(issue.path);
    throw new ProfileProblem(
      say('unreadable', { at: at || 'document', issue: says(issue as ShapeIssue) }),
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
    throw new ProfileProblem(say('not-json', { cause: (error as Error).message }));
  }
}

function refuseOtherKinds(document: unknown): void {
  if (typeof document !== 'object' || document === null || Array.isArray(document)) {
    throw new ProfileProblem(say('not-an-object'));
  }
  const { format, version } = document as { format?: unknown; version?: unknown };
  if (format !== 'palette-profile') {
    throw new ProfileProblem(say('format', { format: JSON.stringify(format) ?? 'nothing' }), 'format');
  }
  if (version !== 1) {
    throw new ProfileProblem(say('version', { version: JSON.stringify(version) ?? 'unknown' }), 'version');
  }
}

/** The rules JSON Schema cannot hold; listed in docs/profile-format.md. */
function holdCrossRules(profile: PaletteProfile): void {
  profile.wavelengths.forEach((nm, i) => {
    if (nm !== GRID_NM[i]) {
      throw new ProfileProblem(say('wavelength', { number: i + 1, nm }), `wavelengths[${i}]`);
    }
  });
  const seen = new Set<string>();
  const sharedColumns = profile.tubes[0]!.covariance.shared.length;
  profile.tubes.forEach((tube, t) => {
    const at = `tubes[${t}]`;
    if (seen.has(tube.id)) {
      throw new ProfileProblem(say('same-id', { id: tube.id }), `${at}.id`);
    }
    seen.add(tube.id);
    for (const name of ['K', 'S'] as const) {
      const bad = tube[name].findIndex((v) => !(v > 0));
      if (bad >= 0) {
        throw new ProfileProblem(
          say('not-above-zero', { name, tube: tube.label, value: tube[name][bad]!, nm: GRID_NM[bad]! }),
          `${at}.${name}[${bad}]`,
        );
      }
    }
    if (tube.covariance.shared.length !== sharedColumns) {
      throw new ProfileProblem(
        say('shared-columns', {
          tube: tube.label,
          count: tube.covariance.shared.length,
          wanted: sharedColumns,
        }),
        `${at}.covariance.shared`,
      );
    }
  });
  for (const [name, entries] of Object.entries(profile.frameDoubt ?? {})) {
    if (entries && entries.length !== sharedColumns) {
      throw new ProfileProblem(
        say('frame-doubt', { name, count: entries.length, wanted: sharedColumns }),
        `frameDoubt.${name}`,
      );
    }
  }
  if (!seen.has(profile.white)) {
    throw new ProfileProblem(
      say('unknown-white', { white: profile.white, known: [...seen].join(', ') }),
      'white',
    );
  }
  if (profile.surface.form === '45/0' && profile.surface.escape === undefined) {
    throw new ProfileProblem(say('no-escape'), 'surface.escape');
  }
  if (profile.discrepancy.sdLnKS.length !== GRID_SIZE || profile.discrepancy.sdLnKS.some((v) => v < 0)) {
    throw new ProfileProblem(say('discrepancy'), 'discrepancy.sdLnKS');
  }
}

function place(path: PropertyKey[]): string {
  return path.map((p, i) => (typeof p === 'number' ? `[${p}]` : `${i ? '.' : ''}${String(p)}`)).join('');
}
