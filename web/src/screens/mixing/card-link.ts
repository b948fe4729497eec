import { type WhiteName, ILLUMINANTS, OBSERVERS } from '../../../../src/colour/illuminant.ts';
import type { Lab } from '../../../../src/colour/lab.ts';
import type { PreTint } from '../../../../src/mix/index.ts';

export interface RecipeCardContent {
  /** Grams by tube id. */
  readonly masses: Readonly<Record<string, number>>;
  readonly wanted: Lab | undefined;
  /** What is made first; its grams are then taken out of the masses and poured as one. */
  readonly preTints: readonly PreTint[];
}

/** The address of a recipe card: it carries the recipe itself, so that it can be kept or sent. */
export function cardLink(
  masses: Readonly<Record<string, number>>,
  wanted: Lab | undefined,
  preTints: readonly PreTint[] = [],
): string {
  const query = new URLSearchParams();
  for (const [id, grams] of Object.entries(masses))
    if (grams > 0) query.append('m', `${grams.toPrecision(8)} ${id}`);
  if (wanted) query.set('want', [wanted.L, wanted.a, wanted.b, wanted.white].join(' '));
  for (const { strong, light, parts, make, pour } of preTints) {
    query.append('first', [parts, make[strong] ?? 0, pour].map((v) => v.toPrecision(8)).join(' '));
    query.append('of', strong);
    query.append('of', light);
  }
  return `#/mixing/card?${query}`;
}

/** What such an address says; whatever cannot be read is left out. */
export function cardContent(query: URLSearchParams): RecipeCardContent {
  const masses: Record<string, number> = {};
  for (const entry of query.getAll('m')) {
    const [grams, ...id] = entry.split(' ');
    if (Number(grams) > 0 && id.length > 0) masses[id.join(' ')] = Number(grams);
  }
  const [L, a, b, white] = (query.get('want') ?? '').split(' ');
  const whites = ILLUMINANTS.flatMap((i) => OBSERVERS.map((o): WhiteName => `${i}/${o}`));
  const name = whites.find((w) => w === white);
  const numbers = [L, a, b].map(Number);
  const wanted =
    name && numbers.every(Number.isFinite)
      ? { L: numbers[0]!, a: numbers[1]!, b: numbers[2]!, white: name }
      : undefined;
  return { masses, wanted, preTints: preTintsIn(query) };
}

function preTintsIn(query: URLSearchParams): PreTint[] {
  const of = query.getAll('of');
  return query.getAll('first').flatMap((first, i) => {
    const [parts, made, pour] = first.split(' ').map(Number);
    const [strong, light] = of.slice(2 * i);
    if (!strong || !light || !(parts! > 0 && made! > 0 && pour! > 0)) return [];
    const make = { [strong]: made!, [light]: made! * parts! };
    return [{ strong, light, parts: parts!, make, pour: pour! }];
  });
}
