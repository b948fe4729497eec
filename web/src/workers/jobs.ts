import type { FilmsAnswer, FilmsAsk } from './films-job.ts';
import type {
  LimitsAnswer,
  LimitsAsk,
  OneMoreAnswer,
  OneMoreAsk,
  ValueStringAnswer,
  ValueStringAsk,
} from './limits-jobs.ts';
import type { AdditionAnswer, AdditionAsk, MatchAnswer, MatchAsk } from './match-job.ts';
import type { MixFilmsAnswer, MixFilmsAsk } from './mix-films-job.ts';
import type { NudgeAnswer, NudgeAsk } from './nudge-job.ts';
import type { OrderAnswer, OrderAsk } from './order-job.ts';
import type {
  HighlightsAnswer,
  HighlightsAsk,
  MudAnswer,
  MudAsk,
  PartsAnswer,
  PartsAsk,
  ReachAnswer,
  ReachAsk,
} from './parts-jobs.ts';
import type { PredictAnswer, PredictAsk } from './predict-job.ts';
import type {
  FamiliesAnswer,
  FamiliesAsk,
  StudyPoursAnswer,
  StudyPoursAsk,
  StudyRecipesAnswer,
  StudyRecipesAsk,
} from './study-jobs.ts';

/** What a worker can be asked, and what it answers. Every job works from the palette opened before. */
export interface Jobs {
  /** A recipe's colour with its interval. */
  predict: { ask: PredictAsk; answer: PredictAnswer };
  /** Recipes for a wanted colour, best first, as the scale can pour them. */
  match: { ask: MatchAsk; answer: MatchAnswer };
  /** A mix as films, from undertone to impasto. */
  mixFilms: { ask: MixFilmsAsk; answer: MixFilmsAnswer };
  /** A recipe in small whole parts. */
  parts: { ask: PartsAsk; answer: PartsAnswer };
  /** What becomes of chroma between two tubes. */
  mud: { ask: MudAsk; answer: MudAnswer };
  /** The white touched with each warm tube. */
  highlights: { ask: HighlightsAsk; answer: HighlightsAnswer };
  /** Whether a colour can be mixed. */
  reach: { ask: ReachAsk; answer: ReachAnswer };
  /** One just-visible step each way. */
  nudge: { ask: NudgeAsk; answer: NudgeAnswer };
  /** In which order a recipe is poured. */
  order: { ask: OrderAsk; answer: OrderAnswer };
  /** What to add to a pile already mixed. */
  addition: { ask: AdditionAsk; answer: AdditionAnswer };
  /** A tube as thin films over a card, its hiding and its strength. */
  films: { ask: FilmsAsk; answer: FilmsAnswer };
  /** What a choice of tubes can reach. */
  limits: { ask: LimitsAsk; answer: LimitsAnswer };
  /** What each tube left out would add. */
  oneMore: { ask: OneMoreAsk; answer: OneMoreAnswer };
  /** Equal steps of value, each with its recipe. */
  valueString: { ask: ValueStringAsk; answer: ValueStringAnswer };
  /** A cropped picture as families of value and warm or cool; needs no palette. */
  families: { ask: FamiliesAsk; answer: FamiliesAnswer };
  /** A recipe for each family, value first. */
  studyRecipes: { ask: StudyRecipesAsk; answer: StudyRecipesAnswer };
  /** Those recipes in grams a scale can weigh, for the canvas. */
  studyPours: { ask: StudyPoursAsk; answer: StudyPoursAnswer };
}
export type JobName = keyof Jobs;
