/** What lies on the mixing table. It stays there while other screens are open. */
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Lab } from '../../../../src/colour/lab.ts';
import type { Priority } from '../../../../src/mix/index.ts';
import type { FoundRecipe } from '../../workers/match-job.ts';

/** A colour asked for. A spectrum is kept where one was read, so that another lamp can be asked about. */
export interface WantedColour {
  readonly lab: Lab;
  readonly spectrum?: readonly number[];
}

export interface MixTable {
  /** Grams by tube id. */
  readonly masses: Readonly<Record<string, number>>;
  readonly wanted: WantedColour | undefined;
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
  table = { ...table, ...change };
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
