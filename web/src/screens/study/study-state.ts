/** The study under way. It stays while other screens are open and goes with the page: a picture is nobody else's. */
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import {
  CANVAS_SETTINGS,
  type CanvasSettings,
  type Crop,
  FAMILY_SETTINGS,
  type FamilySettings,
} from '../../../../src/study/index.ts';
import type { FamiliesAnswer, StudyPoursAnswer, StudyRecipesAnswer } from '../../workers/study-jobs.ts';
import type { OpenedPicture } from './open-picture.ts';

export interface StudyTable {
  readonly picture: OpenedPicture | undefined;
  readonly crop: Crop | undefined;
  readonly settings: FamilySettings;
  readonly canvas: CanvasSettings;
  readonly maxTubes: number;
  readonly view: 'paint' | 'picture' | 'value';
  readonly families: FamiliesAnswer | undefined;
  readonly recipes: StudyRecipesAnswer | undefined;
  /** The recipes in grams, for the canvas and the scale. */
  readonly pours: StudyPoursAnswer | undefined;
}

let table: StudyTable = {
  picture: undefined,
  crop: undefined,
  settings: FAMILY_SETTINGS,
  canvas: CANVAS_SETTINGS,
  maxTubes: 4,
  view: 'paint',
  families: undefined,
  recipes: undefined,
  pours: undefined,
};
const hosts = new Set<ReactiveControllerHost>();

export function changeStudy(change: Partial<StudyTable>): void {
  table = { ...table, ...change };
  for (const host of hosts) host.requestUpdate();
}

export class StudyTableController implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }
  get value(): StudyTable {
    return table;
  }
  hostConnected(): void {
    hosts.add(this.#host);
  }
  hostDisconnected(): void {
    hosts.delete(this.#host);
  }
}
