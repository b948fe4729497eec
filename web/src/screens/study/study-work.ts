import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { cropped } from '../../../../src/study/index.ts';
import { RemoteController } from '../../state/remote.ts';
import { ScaleController } from '../../state/scale.ts';
import { PaletteController, quickBench, searchBench } from '../../workers/palette-controller.ts';
import type { FamiliesAnswer, StudyPoursAnswer, StudyRecipesAnswer } from '../../workers/study-jobs.ts';
import { wholeOf } from './crop-moves.ts';
import { canvasHeight, densitiesOf } from './family-rows.ts';
import { openPicture } from './open-picture.ts';
import { type StudyTable, StudyTableController, changeStudy } from './study-state.ts';

/** Keeps a study's families, recipes and pours in step with what was chosen, each worked out when the hand rests. */
export class StudyWork implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #study: StudyTableController;
  readonly #palette: PaletteController;
  readonly #scale: ScaleController;
  readonly #families: RemoteController<FamiliesAnswer>;
  readonly #recipes: RemoteController<StudyRecipesAnswer>;
  readonly #pours: RemoteController<StudyPoursAnswer>;
  #wait: ReturnType<typeof setTimeout> | undefined;
  /** What the pours were last worked out from. */
  #poured: readonly unknown[] = [];
  /** Share of the search for recipes that is done. */
  share = 0;

  constructor(host: ReactiveControllerHost & HTMLElement) {
    this.#host = host;
    this.#study = new StudyTableController(host);
    this.#scale = new ScaleController(host);
    this.#families = new RemoteController<FamiliesAnswer>(host);
    this.#recipes = new RemoteController<StudyRecipesAnswer>(host);
    this.#pours = new RemoteController<StudyPoursAnswer>(host);
    this.#palette = new PaletteController(host, () => {
      if (this.#study.value.families) void this.#findRecipes();
    });
    host.addController(this);
  }

  get study(): StudyTable {
    return this.#study.value;
  }
  get profile(): PaletteProfile | undefined {
    const palette = this.#palette.value;
    return palette.status === 'open' ? palette.profile : undefined;
  }
  get noPalette(): boolean {
    return this.#palette.value.status === 'none';
  }
  get finding(): boolean {
    return this.#recipes.pending;
  }
  get resolution(): number {
    return this.#scale.value.resolution;
  }
  get errors(): readonly string[] {
    return [this.#families.error, this.#recipes.error, this.#pours.error].flatMap((e) =>
      e ? [e.message] : [],
    );
  }

  hostUpdate(): void {
    const { recipes, canvas, crop, families } = this.study;
    const scale = this.#scale.value;
    const now = [recipes, canvas, crop, scale, this.profile];
    if (!recipes || !families || now.every((v, i) => v === this.#poured[i])) return;
    this.#poured = now;
    void this.#pour();
  }

  hostDisconnected(): void {
    clearTimeout(this.#wait);
    // Pours stopped by leaving are worked out again on coming back.
    this.#poured = [];
  }

  /** Opens a picture. @throws where it is none. */
  async take(file: File): Promise<void> {
    const picture = await openPicture(file);
    this.study.picture?.bitmap.close();
    changeStudy({ picture, families: undefined, recipes: undefined, pours: undefined });
    this.settle({ crop: wholeOf(picture) }, 0);
  }

  /** Waits until the hand rests, then parts the picture. */
  settle(change: Partial<StudyTable>, after = 180): void {
    changeStudy(change);
    clearTimeout(this.#wait);
    this.#wait = setTimeout(() => void this.#part(), after);
  }

  atMost(maxTubes: number): void {
    changeStudy({ maxTubes });
    void this.#findRecipes();
  }

  async #part(): Promise<void> {
    const { picture, crop, settings } = this.study;
    if (!picture || !crop) return;
    // Only the cropped pixels travel to the worker.
    const { width, height, rgba } = cropped(picture, crop);
    const families = await this.#families.run((signal) =>
      quickBench.run(
        'families',
        { picture: { width, height, rgba }, crop: { x: 0, y: 0, width, height }, settings },
        { signal },
      ),
    );
    if (!families) return;
    changeStudy({ families, recipes: undefined, pours: undefined });
    await this.#findRecipes();
  }

  async #findRecipes(): Promise<void> {
    const { families, maxTubes } = this.study;
    if (!families || !this.profile) return;
    this.share = 0;
    const recipes = await this.#recipes.run((signal) =>
      searchBench.run(
        'studyRecipes',
        { families: families.families, options: { maxTubes } },
        {
          signal,
          onProgress: (share) => {
            this.share = share;
            this.#host.requestUpdate();
          },
        },
      ),
    );
    if (recipes) changeStudy({ recipes, pours: undefined });
  }

  async #pour(): Promise<void> {
    const { families, recipes, canvas } = this.study;
    const { profile } = this;
    if (!families || !recipes || !profile || recipes.length !== families.families.length) return;
    const settings = {
      canvas: { ...canvas, heightCentimetres: canvasHeight(this.study) },
      densities: densitiesOf(profile),
      scale: this.#scale.value,
    };
    const pours = await this.#pours.run((signal) =>
      searchBench.run('studyPours', { families: families.families, recipes, settings }, { signal }),
    );
    if (pours && this.study.recipes === recipes) changeStudy({ pours });
  }
}
