import type { SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import { type CarriedRecipe, carryRecipe } from '../../src/mix/carry-over/carry-recipe.ts';
import { bridgeFromSet } from '../../src/profile/merge/bridge.ts';
import { mergeProfiles } from '../../src/profile/merge/merge-profiles.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import { readProfile } from '../../src/profile/read.ts';
import { type TubeReplacement, replaceTube } from '../../src/profile/replace/replace-tube.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import { writeProfile } from '../../src/profile/write.ts';
import { defined } from '../defined.ts';

/** A new tube in the job's profile. */
export interface ReplaceJob {
  readonly white?: undefined;
  readonly oldId: string;
  readonly set: SwatchSet;
  readonly tube: { readonly id: string; readonly label: string };
  readonly inSet: string | undefined;
  readonly oldTube: 'where it helps' | 'always' | 'never';
  readonly recipes: readonly Readonly<Record<string, number>>[];
  readonly when: string;
}

export interface ReplaceAnswer {
  /** The new profile as text. */
  readonly profile: string;
  readonly words: readonly string[];
  readonly difference: Pick<TubeReplacement['difference'], 'colours' | 'strengthPercent'>;
  readonly recipes: readonly Pick<CarriedRecipe, 'before' | 'masses' | 'outcome' | 'deltaE00' | 'sentence'>[];
}

/** A second profile that joins the job's own. */
export interface MergeJob {
  readonly white?: undefined;
  readonly second: string;
  readonly bridge: SwatchSet | undefined;
  readonly secondWhite: string | undefined;
  readonly sameIds: 'combined' | 'apart' | undefined;
  readonly when: string;
}

export interface MergeAnswer {
  readonly profile: string;
  readonly words: readonly string[];
}

export function runReplace(profile: PaletteProfile, job: ReplaceJob): ReplaceAnswer {
  const { oldId, set, tube, recipes, when, oldTube, inSet } = job;
  const made = replaceTube(profile, oldId, set, tube, when, { oldTube, ...defined({ inSet }) });
  const name = made.nameInBoth;
  return {
    profile: writeProfile(made.profile),
    words: made.words,
    difference: { colours: made.difference.colours, strengthPercent: made.difference.strengthPercent },
    recipes: recipes.map((recipe) => {
      const c = carryRecipe(made.both, recipe, { [oldId]: name });
      const masses = Object.fromEntries(
        Object.entries(c.masses).map(([id, grams]) => [id === name ? tube.id : id, grams]),
      );
      const { before, outcome, deltaE00, sentence } = c;
      return { before, masses, outcome, deltaE00, sentence };
    }),
  };
}

export function runMerge(first: PaletteProfile, job: MergeJob): MergeAnswer {
  const second = readProfile(job.second);
  const { sameIds, secondWhite, when } = job;
  const bridge =
    job.bridge &&
    bridgeFromSet(job.bridge, paletteOf(first), paletteOf(second), defined({ second: secondWhite }));
  const { profile, words } = mergeProfiles(first, second, bridge, when, defined({ sameIds }));
  return { profile: writeProfile(profile), words };
}
