import { knownTubes, labelOf, type MixingPalette } from '../src/fit/palette.ts';
import { paletteOf } from '../src/profile/palette-of.ts';
import type { PaletteProfile } from '../src/profile/schema.ts';
import { parseMasses, readProfileFile } from './input.ts';
import { CommandProblem } from './problem.ts';

/** A profile's tubes as a person names them: they read labels, and may write a label or an id. */
export class Rack {
  readonly profile: PaletteProfile;
  readonly #palette: MixingPalette;

  /** @throws CommandProblem, ProfileProblem */
  constructor(file: string) {
    this.profile = readProfileFile(file);
    this.#palette = paletteOf(this.profile);
  }

  readonly label = (id: string): string => labelOf(this.#palette, id);

  /** @throws CommandProblem for what is neither an id nor the label of one tube */
  readonly id = (name: string): string => {
    const { tubes } = this.profile;
    if (tubes.some((tube) => tube.id === name)) return name;
    const called = tubes.filter((tube) => tube.label.toLowerCase() === name.toLowerCase());
    if (called.length === 1) return called[0]!.id;
    const known = knownTubes(this.#palette.tubes);
    throw new CommandProblem(
      called.length === 0
        ? `The palette has no tube "${name}"; it has ${known}.`
        : `${called.length} tubes are called "${name}"; name one by its id: ${called.map((t) => t.id).join(', ')}.`,
    );
  };

  /** "blue=1,white=3" by tube id. @throws CommandProblem */
  readonly masses = (text: string): Record<string, number> => {
    const masses: Record<string, number> = {};
    for (const [name, grams] of Object.entries(parseMasses(text))) {
      const id = this.id(name);
      if (id in masses) throw new CommandProblem(`"${name}" is given twice; give each tube once.`, 2);
      masses[id] = grams;
    }
    return masses;
  };

  /** "8.20 g white, 0.31 g blue", most first. */
  readonly grams = (masses: Readonly<Record<string, number>>): string =>
    byMost(masses)
      .map(([id, g]) => `${gramsWords(g)} ${this.label(id)}`)
      .join(', ');

  /** "white 91.3 %, blue 8.7 %", most first; what is under a thousandth of a per cent is not said. */
  readonly shares = (shares: Readonly<Record<string, number>>): string =>
    byMost(shares)
      .filter(([, share]) => share >= 1e-5)
      .map(([id, share]) => `${this.label(id)} ${percent(100 * share)} %`)
      .join(', ');
}

function byMost(masses: Readonly<Record<string, number>>): [string, number][] {
  return Object.entries(masses).toSorted((a, b) => b[1] - a[1]);
}

/** Two decimals, three for what is less than a tenth of a gram. */
export function gramsWords(g: number): string {
  return `${g >= 0.1 ? g.toFixed(2) : g >= 0.001 ? g.toFixed(3) : g.toPrecision(2)} g`;
}

const percent = (p: number): string => (p >= 1 ? p.toFixed(1) : p.toPrecision(2));
