import { z } from 'zod';
import { swatchSetSchema } from '../calibrate/swatch-set/schema.ts';
import { profileSchema } from './schema.ts';

/**
 * The JSON Schemas of the two documents the program exchanges, by file name under docs/. Rules across members (ids
 * that must exist, lengths that must agree) cannot stand in JSON Schema and are listed in the documents' own pages.
 */
export function publishedSchemas(): Record<string, Record<string, unknown>> {
  const make = (schema: z.ZodType, title: string, description: string): Record<string, unknown> => ({
    ...(z.toJSONSchema(schema, { io: 'input', target: 'draft-2020-12' }) as Record<string, unknown>),
    title,
    description,
  });
  return {
    'palette-profile.schema.json': make(
      profileSchema,
      'Palette profile, version 1',
      'Kubelka-Munk constants of a set of paint tubes with their uncertainty; see docs/profile-format.md.',
    ),
    'swatch-set.schema.json': make(
      swatchSetSchema,
      'Swatch set, version 1',
      'What was painted and what was read: the input of a fit; see docs/swatch-set.md.',
    ),
  };
}
