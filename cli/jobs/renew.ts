import { carryRecipe } from '../../src/mix/carry-over/carry-recipe.ts';
import { rereadSwatches } from '../../src/profile/drift/reread-swatches.ts';
import { yearlyReread } from '../../src/profile/drift/yearly-reread.ts';
import { mergeProfiles } from '../../src/profile/merge/merge-profiles.ts';
import { replaceTube } from '../../src/profile/replace/replace-tube.ts';
import { writeProfile } from '../../src/profile/write.ts';
import { parseMasses, readProfileFile, readSet } from '../input.ts';
import { type Output, printJson, table, writeOut } from '../output.ts';
import { CommandProblem } from '../problem.ts';
import type { MergeOptions, ReplaceOptions, RereadOptions } from '../verbs/renew.ts';
import { bridgeFrom } from './bridge.ts';

export function runReplace(
  profileFile: string,
  oldId: string,
  setFile: string,
  options: ReplaceOptions,
  output: Output,
): void {
  const { id, inSet, oldTube } = options;
  if (!['where it helps', 'always', 'never'].includes(oldTube)) {
    throw new CommandProblem(`--old-tube is "${oldTube}"; say 'where it helps', always or never.`, 2);
  }
  const recipes = (options.recipe ?? []).map(parseMasses);
  const set = readSet(setFile);
  const named = set.tubes.find((t) => (inSet ? t.id === inSet : t.role !== 'white'));
  const made = replaceTube(
    readProfileFile(profileFile),
    oldId,
    set,
    { id, label: options.label ?? named?.label ?? id },
    new Date().toISOString(),
    { oldTube, ...(inSet ? { inSet } : {}) },
  );
  const carried = recipes.map((recipe) => carryRecipe(made.both, recipe, { [oldId]: made.nameInBoth }));
  writeOut(options.output, writeProfile(made.profile), output);
  const { strengthPercent, hidingThicknessRatio, colours } = made.difference;
  if (options.json) {
    printJson(output, {
      unlikeness: made.prior?.unlikeness ?? null,
      oldTubeWeight: made.prior?.oldTubeWeight ?? 0,
      colours: colours.map(({ of, deltaE00, beyondDoubt }) => ({ of, deltaE00, beyondDoubt })),
      strengthPercent,
      hidingThicknessRatio,
      words: made.words,
      recipes: carried.map(({ before, masses, outcome, deltaE00, sentence }) => ({
        before,
        masses: renamed(masses, made.nameInBoth, id),
        outcome,
        deltaE00,
        sentence,
      })),
    });
    return;
  }
  // With the profile on standard output the report would be in its way.
  const say = options.output === '-' ? output.err : output.out;
  say([...made.words, ...carried.map((c) => c.sentence)].join('\n'));
}

function renamed(masses: Readonly<Record<string, number>>, from: string, to: string): Record<string, number> {
  return Object.fromEntries(Object.entries(masses).map(([k, v]) => [k === from ? to : k, v]));
}

export function runMerge(firstFile: string, secondFile: string, options: MergeOptions, output: Output): void {
  const first = readProfileFile(firstFile);
  const second = readProfileFile(secondFile);
  const { sameIds } = options;
  if (sameIds !== undefined && sameIds !== 'combined' && sameIds !== 'apart') {
    throw new CommandProblem(`--same-ids is "${sameIds}"; say combined or apart.`, 2);
  }
  const bridge = options.bridge ? bridgeFrom(options.bridge, first, second, options.secondWhite) : undefined;
  const when = new Date().toISOString();
  const { profile, words } = mergeProfiles(first, second, bridge, when, sameIds ? { sameIds } : {});
  writeOut(options.output, writeProfile(profile), output);
  const say = options.output === '-' ? output.err : output.out;
  say(words.join('\n'));
}

export function runReread(
  firstFile: string,
  againFile: string,
  options: RereadOptions,
  output: Output,
): void {
  const swatches = rereadSwatches(readSet(firstFile), readSet(againFile));
  const report = yearlyReread(swatches);
  if (options.json) return printJson(output, report);
  const rows = report.swatches.map((s) => [s.id, s.deltaE00.toFixed(2), s.beyondScatter ? 'yes' : 'no']);
  output.out([table(['swatch', 'CIEDE2000', 'beyond scatter'], rows), '', ...report.words].join('\n'));
}
