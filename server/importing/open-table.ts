import { z } from 'zod';
import { geometrySchema } from '../../src/calibrate/swatch-set/schema.ts';
import { readCgats } from '../../src/profile/exchange/cgats/read.ts';
import { readCsv } from '../../src/profile/exchange/csv/read.ts';
import { readCxf } from '../../src/profile/exchange/cxf/read.ts';
import type { ReadChoices, SpectralTable } from '../../src/profile/exchange/spectral-table.ts';
import { type Defined, defined } from '../defined.ts';
import { unusable } from '../problem.ts';
import { say } from '../api/sentences/importing.ts';

/** What a table's reader may be told; members left out are left open. */
export interface TableAnswers {
  /** The JSON that a CSV has beside it: facts of the whole table that rows cannot hold. */
  readonly sidecar?: string | undefined;
  readonly geometry?: ReadChoices['geometry'] | undefined;
  readonly scale?: ReadChoices['scale'] | undefined;
  readonly decimalComma?: boolean | undefined;
}

/**
 * A table of readings in one of the open formats, told apart by how the text begins: XML is CxF3, a keyword line of
 * CGATS.17 is CGATS.17, anything else is taken for CSV.
 * @throws ExchangeProblem with one sentence
 */
export function openTable(text: string, answers: TableAnswers = {}): SpectralTable {
  const { geometry, scale, decimalComma } = answers;
  const choices: ReadChoices = {
    ...(geometry ? { geometry } : {}),
    ...(scale ? { scale } : {}),
    ...(decimalComma === undefined ? {} : { decimalComma }),
  };
  const start = text.replace(/^\uFEFF/, '').trimStart();
  if (start.startsWith('<')) return readCxf(text, choices);
  if (/^BEGIN_DATA(_FORMAT)?\s*$/m.test(text)) return readCgats(text, choices);
  const table = readCsv(text, choices);
  return answers.sidecar === undefined ? table : { ...table, ...factsOf(answers.sidecar), rows: table.rows };
}

const factsSchema = z.object({
  title: z.string().max(500).optional(),
  created: z.iso.datetime({ offset: true }).optional(),
  originator: z.string().max(500).optional(),
  instrument: z.string().max(500).optional(),
  geometry: geometrySchema.optional(),
  white: z.string().max(60).optional(),
  notes: z.record(z.string(), z.string()).optional(),
});

function factsOf(sidecar: string): Defined<z.infer<typeof factsSchema>> {
  let facts: unknown;
  try {
    facts = JSON.parse(sidecar);
  } catch {
    throw unusable(say('sidecar-unreadable'), 'sidecar');
  }
  const checked = factsSchema.safeParse(facts);
  if (!checked.success) throw unusable(say('sidecar-other'), 'sidecar');
  return defined(checked.data);
}
