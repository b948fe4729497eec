/** What lies on the mixing table. It stays there while other screens are open. */
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Lab } from '../../../../src/colour/lab.ts';
import type { Masses, PreTint, Priority, Wanted } from '../../../../src/mix/index.ts';
import type { FoundRecipe } from '../../workers/match-job.ts';

/** A colour asked for. A spectrum is kept where one was read, so that another lamp can be asked about. */
export interface WantedColour {
  readonly lab: Lab;
  readonly spectrum?: readonly number[];
}

export const asWanted = (c: WantedColour): Wanted => (c.spectrum ? { spectrum: c.spectrum } : { lab: c.lab });

/** How the pile is laid: over what, and how thick in units of the white's scattering. */
export interface Lay {
  /** A card, a toned ground, or the id of a tube that dried there. */
  readonly ground: 'card' | 'toned' | { readonly tube: string };
  readonly X: number | 'thick';
}

export interface MixTable {
  /** Grams by tube id. */
  readonly masses: Readonly<Record<string, number>>;
  readonly wanted: WantedColour | undefined;
  /** Where the masses are those of a recipe made with pre-tints. */
  readonly preTints: readonly PreTint[];
  readonly lay: Lay;
  readonly unit: 'parts' | 'grams';
  readonly priority: Priority;
  readonly maxTubes: number;
  /** Grams of mix a recipe is for. */
  readonly amount: number;
  readonly without: readonly string[];
  readonly recipes: { readonly list: readonly FoundRecipe[]; readonly reached: boolean } | undefined;
}

let table: MixTable = {
  masses: {},
  wanted: undefined,
  preTints: [],
  lay: { ground: 'card', X: 'thick' },
  unit: 'grams',
  priority: 'value',
  maxTubes: 4,
  amount: 20,
  without: [],
  recipes: undefined,
};
const hosts = new Set<ReactiveControllerHost>();

export function mixTable(): MixTable {
  return table;
}

export function changeTable(change: Partial<MixTable>): void {
  // Other masses are another recipe: what was to be made before the old one is forgotten.
  const forgets = change.masses && !('preTints' in change) ? { preTints: [] } : {};
  table = { ...table, ...forgets, ...change };
  for (const host of hosts) host.requestUpdate();
}

export class MixTableController implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }
  get value(): MixTable {
    return table;
  }
  hostConnected(): void {
    hosts.add(this.#host);
  }
  hostDisconnected(): void {
    hosts.delete(this.#host);
  }
}

/** Grams of a recipe with its pre-tints taken apart again. */
export function withPreTints(masses: Masses, preTints: readonly PreTint[]): Masses {
  const out: Record<string, number> = { ...masses };
  for (const { strong, light, parts, pour } of preTints) {
    out[light] = (out[light] ?? 0) + (pour * parts) / (1 + parts);
    out[strong] = (out[strong] ?? 0) + pour / (1 + parts);
  }
  return out;
}
