/** A new blue in the old one's place, and a recipe carried over. Run: node --import tsx examples/replace-a-tube.ts */
import { readFileSync } from 'node:fs';
import { carryRecipe, historyOf, readProfile, readSwatchSet, replaceTube, writeProfile } from 'tintladder';

const read = (name: string): string => readFileSync(new URL(name, import.meta.url), 'utf8');
const profile = readProfile(read('invented-palette.json'));
const ladder = readSwatchSet(read('invented-short-ladder.json'));
const tube = { id: 'blue-2', label: 'invented blue, second tube' };
const replaced = replaceTube(profile, 'blue', ladder, tube, new Date().toISOString());
for (const sentence of replaced.words) console.log(sentence);

const carried = carryRecipe(replaced.both, { blue: 2, white: 8 }, { blue: replaced.nameInBoth });
console.log(carried.sentence);
console.log(`The profile is ${writeProfile(replaced.profile).length} characters; its history:`);
for (const line of historyOf(replaced.profile))
  console.log(`${line.what}: ${line.tube} for ${line.replaces ?? '-'}`);
