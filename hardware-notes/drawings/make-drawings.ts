/** Makes the drawings of the head beside this file: `node --import tsx hardware-notes/drawings/make-drawings.ts`. */
import { writeFileSync } from 'node:fs';
import { DRAWINGS } from './drawings.ts';

for (const [name, draw] of Object.entries(DRAWINGS)) {
  writeFileSync(new URL(`${name}.svg`, import.meta.url), draw().svg());
  console.log(`${name}.svg`);
}
