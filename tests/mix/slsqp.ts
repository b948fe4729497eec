import { spawnSync } from 'node:child_process';
import { GRID_SIZE } from '../../src/colour/grid.ts';
import type { TubeSet } from '../../src/mix/index.ts';

/** Interpreters looked for, in this order; the first with scipy is used. */
const PYTHONS = ['/usr/bin/python3', 'python3'];

/** A Python with scipy, or undefined. */
export function pythonWithScipy(): string | undefined {
  return PYTHONS.find((p) => spawnSync(p, ['-c', 'import scipy.optimize, numpy']).status === 0);
}

export interface SlsqpAnswer {
  /** Least CIEDE2000 of each family. */
  readonly deltaE00: readonly number[];
  /** Of processor time. */
  readonly seconds: number;
}

/** Runs slsqp.py on the set's own effective parts: the same problem, scaled as well as ours is. */
export function slsqp(
  python: string,
  set: TubeSet,
  targets: readonly (readonly [number, number, number])[],
  families: readonly (readonly number[])[],
  starts: readonly (readonly (readonly number[])[])[],
): SlsqpAnswer[] {
  const rows = (v: Float64Array): number[][] =>
    set.ids.map((_, t) => [...v.subarray(t * GRID_SIZE, (t + 1) * GRID_SIZE)]);
  const job = {
    K: rows(set.K),
    S: rows(set.S),
    surface: set.surface,
    weights: set.weights.slice(0, 3).map((w) => [...w]),
    targets,
    families,
    starts,
  };
  const run = spawnSync(python, [new URL('slsqp.py', import.meta.url).pathname], {
    input: JSON.stringify(job),
    encoding: 'utf8',
    maxBuffer: 64e6,
  });
  if (run.status !== 0) throw new Error(`slsqp.py failed: ${run.stderr.slice(-2000)}`);
  return JSON.parse(run.stdout) as SlsqpAnswer[];
}
