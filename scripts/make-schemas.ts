/**
 * Writes the JSON Schemas (draft 2020-12) that the documents publish, from the zod schemas the program reads by.
 *
 *   node --import tsx scripts/make-schemas.ts
 */
import { writeFileSync } from 'node:fs';
import { publishedSchemas } from '../src/profile/published-schemas.ts';

for (const [file, schema] of Object.entries(publishedSchemas())) {
  writeFileSync(new URL(`../docs/${file}`, import.meta.url), `${JSON.stringify(schema, null, 2)}\n`);
  console.log(`docs/${file}`);
}
