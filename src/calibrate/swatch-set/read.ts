import { holdInstrumentRules } from './instrument-rules.ts';
import { SwatchSetProblem } from './problem.ts';
import { type SwatchSet, swatchSetSchema } from './schema.ts';
import { holdSwatchRules } from './swatch-rules.ts';

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
      `${describe(document, issue.path) || 'The swatch set'} cannot be read: ${issue.message}; mend ${at || 'the document'} and import it again.`,
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
    throw new SwatchSetProblem(
      `The file is not JSON (${(error as Error).message}); a swatch set is a JSON document, so choose another file.`,
    );
  }
}

function refuseOtherKinds(document: unknown): void {
  if (typeof document !== 'object' || document === null || Array.isArray(document)) {
    throw new SwatchSetProblem(
      'A swatch set is a JSON object; something else was given, so choose another file.',
    );
  }
  const { format, version } = document as { format?: unknown; version?: unknown };
  if (format !== 'swatch-set') {
    throw new SwatchSetProblem(
      `The document says format ${JSON.stringify(format) ?? 'nothing'}; a swatch set says "swatch-set", so choose another file.`,
      'format',
    );
  }
  if (version !== 1) {
    throw new SwatchSetProblem(
      `The swatch set is version ${JSON.stringify(version) ?? 'unknown'}; this program reads version 1, so use a newer program or write it as version 1.`,
      'version',
    );
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
