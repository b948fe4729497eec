/** What one part of blue and four of white will look like. Run: node --import tsx examples/predict-a-mix.ts [profile.json] */
import { readFileSync } from 'node:fs';
import { paletteOf, predictMix, readProfile } from 'tintladder';

const file = process.argv[2] ?? new URL('invented-palette.json', import.meta.url);
const palette = paletteOf(readProfile(readFileSync(file, 'utf8')));
const { lab, value, leanWord, interval } = predictMix(palette, { blue: 1, white: 4 });
console.log(`L* ${lab.L.toFixed(2)}, a* ${lab.a.toFixed(2)}, b* ${lab.b.toFixed(2)} under ${lab.white}`);
console.log(
  `value ${value.toFixed(2)}, ${leanWord}; good to ${interval.radius95.toFixed(2)} CIEDE2000, 95 times in 100`,
);
