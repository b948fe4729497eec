/** Recipes for a colour, nearest first. Run: node --import tsx examples/match-a-colour.ts [profile.json] */
import { readFileSync } from 'node:fs';
import { type Lab, match, paletteOf, readProfile } from 'tintladder';

const file = process.argv[2] ?? new URL('invented-palette.json', import.meta.url);
const palette = paletteOf(readProfile(readFileSync(file, 'utf8')));
const wanted: Lab = { L: 62, a: 6, b: 4, white: 'D65/10deg' };
const { recipes, sentence } = match(palette, { lab: wanted }, { grams: 20, priority: 'value' });
console.log(sentence);
for (const recipe of recipes) {
  const pours = Object.entries(recipe.masses).map(([id, grams]) => `${grams.toFixed(2)} g ${id}`);
  console.log(`${pours.join(', ')}: off by ${recipe.deltaE00.toFixed(2)}, ${recipe.split.sentence}`);
}
