import { call } from '../../api/call.ts';
import { mixTable } from '../mixing/mix-state.ts';

type Masses = Readonly<Record<string, number>>;

/** Recipes with a tube that this person would miss: what lies on the mixing table, and the checks. Grams by tube id. */
export async function keptRecipes(tube: string): Promise<Masses[]> {
  const { checks } = await call('listChecks');
  const used = (masses: Masses): Masses =>
    Object.fromEntries(Object.entries(masses).filter(([, g]) => g > 0));
  return [mixTable().masses, ...checks.map((check) => check.masses)]
    .map(used)
    .filter((masses) => masses[tube] !== undefined);
}
