import type { TubeChecks } from '../api/tube-facts.ts';
import type { Bench } from '../bench.ts';
import { notFound } from '../problem.ts';
import { checksOf } from '../store/checks.ts';
import { tubeById } from '../store/tubes.ts';
import { checkViews } from './check-view.ts';
import { say } from '../api/sentences/checks.ts';

/** How the checks that hold a tube came out. @throws HttpProblem 404 */
export async function tubeChecks(bench: Bench, tubeId: string): Promise<TubeChecks> {
  const tube = tubeById(bench.db, tubeId);
  if (!tube) throw notFound(say('no-tube', { id: tubeId }));
  const holding = checksOf(bench.db, tube.palette_id).filter(
    (check) => ((JSON.parse(check.masses) as Record<string, number>)[tubeId] ?? 0) > 0,
  );
  const results = (await checkViews(bench, tube.palette_id, holding)).flatMap((check) => check.result ?? []);
  const count = results.length;
  if (count === 0) return { tubeId, count, mean: null, worst: null, inside95: null };
  return {
    tubeId,
    count,
    mean: results.reduce((sum, r) => sum + r.deltaE00, 0) / count,
    worst: Math.max(...results.map((r) => r.deltaE00)),
    inside95: results.filter((r) => r.inside95).length / count,
  };
}
