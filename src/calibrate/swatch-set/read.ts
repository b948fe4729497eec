import { type ShapeIssue, shapeSays } from '../../sentence/shape.ts';
import { holdInstrumentRules } from './instrument-rules.ts';
import { SwatchSetProblem } from './problem.ts';
import { type SwatchSet, swatchSetSchema } from './schema.ts';
import { holdSwatchRules } from './swatch-rules.ts';
import { say } from './sentences.ts';

/**
 * Reads a swatch set, version 1, from a parsed JSON document or its text. Every rule of docs/swatch-set.md holds for
 * what comes back; a document may hold checks alone.
 * @throws SwatchSetProblem with one sentence that names the place, for the first rule that does not hold.
 */
export function readSwatchSet(input: unknown): SwatchSet {
  const document = typeof input === 'string' ? parse(input) : input;
  refuseOtherKinds(document);
  const result = swatchSetSchema.safeParse(document);
  if (!result.success) {
    const issue = result.error.issues[0]!;
    const at = place(issue.path);
    throw new SwatchSetProblem(
      say('unreadable', {
        what: describe(document, issue.path) || say('the-swatch-set'),
        issue: shapeSays(issue as ShapeIssue),
        at: at || say('the-document'),
      }),
      at,
    );
  }
  holdInstrumentRules(result.data);
  holdSwatchRules(result.data);
  return result.data;
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    throw new SwatchSetProblem(say('not-json', { cause: (error as Error).message }));
  }
}

function refuseOtherKinds(document: unknown): void {
  if (typeof document !== 'object' || document === null || Array.isArray(document)) {
    throw new SwatchSetProblem(say('not-an-object'));
  }
  const { format, version } = document as { format?: unknown; version?: unknown };
  if (format !== 'swatch-set') {
    throw new SwatchSetProblem(say('format', { format: JSON.stringify(format) ?? 'nothing' }), 'format');
  }
  if (version !== 1) {
    throw new SwatchSetProblem(say('version', { version: JSON.stringify(version) ?? 'unknown' }), 'version');
  }
}

function place(path: readonly PropertyKey[]): string {
  return path.map((p, i) => (typeof p === 'number' ? `[${p}]` : `${i ? '.' : ''}${String(p)}`)).join('');
}

/** "Swatch "blue-1:4", readings[0][3]" where the document gives an id to name. */
function describe(document: unknown, path: readonly PropertyKey[]): string {
  const [list, index, ...rest] = path;
  const words: Record<string, string> = {
    swatches: 'Swatch',
    checks: 'Check',
    tubes: 'Tube',
    backings: 'Backing',
  };
  const word = words[String(list)];
  if (!word || typeof index !== 'number') return place(path);
  const item = (document as Record<string, { id?: unknown }[]>)[String(list)]?.[index];
  const id = typeof item?.id === 'string' ? ` "${item.id}"` : ` ${index + 1}`;
  return `${word}${id}${rest.length ? `, ${place(rest)},` : ''}`;
}
