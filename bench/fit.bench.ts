/**
 * How fast a fit is, as ratios taken in one run on one machine:
 *
 *   node --import tsx bench/fit.bench.ts
 *
 * One tube of the spectral fixture (36 wavelengths, four rungs) against its white, the same objective solved three ways:
 * this program's analytic slopes and eliminated blocks; the same solver with slopes by differences; and, where python3
 * has scipy, scipy.optimize.least_squares on the same readings, priors and weights (its own `lm`-like trust region, slopes
 * by differences, as it comes). Then whole palettes.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { readSwatchSet } from '../src/calibrate/swatch-set/read.ts';
import type { SwatchSet } from '../src/calibrate/swatch-set/schema.ts';
import { fitPalette } from '../src/fit/fit-palette.ts';
import { backwardInPlace, choleskyInPlace, forwardInPlace } from '../src/fit/linear/cholesky.ts';
import { costAt, lineariseAt } from '../src/fit/model/linearise.ts';
import { fitProblem } from '../src/fit/model/problem.ts';
import { SETTINGS } from '../src/fit/model/settings.ts';
import { startOf } from '../src/fit/model/start.ts';
import { groupWeights, sameDiscrepancy } from '../src/fit/model/weights.ts';
import { levenbergMarquardt } from '../src/fit/solve/levenberg-marquardt.ts';
import { minimise } from '../src/fit/solve/solve-palette.ts';

export interface BenchRow {
  readonly what: string;
  readonly milliseconds: number;
  readonly note: string;
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
}

function timed(times: number, work: () => void): number {
  work();
  return median(
    Array.from({ length: times }, () => {
      const start = performance.now();
      work();
      return performance.now() - start;
    }),
  );
}

function fixture(name: string): SwatchSet {
  return readSwatchSet(
    readFileSync(new URL(`../tests/fixtures/paint/${name}.json`, import.meta.url), 'utf8'),
  );
}

/** The first coloured tube of a set with its white. */
function oneTube(set: SwatchSet): SwatchSet {
  const [white, tube] = [set.tubes[0]!.id, set.tubes[1]!.id];
  const inIt = (masses: Readonly<Record<string, number>>): boolean =>
    Object.keys(masses).every((id) => id === white || id === tube);
  return {
    ...set,
    tubes: set.tubes.slice(0, 2),
    swatches: set.swatches.filter((s) => inIt(s.masses ?? {})),
    checks: [],
  };
}

/** scipy's least_squares on the same objective; milliseconds, or undefined where there is none. */
function scipyMilliseconds(input: unknown): { milliseconds: number; cost: number } | undefined {
  const program = `
import json, sys, time
import numpy as np
from scipy.optimize import least_squares
d = json.load(sys.stdin)
y = [np.array(v) for v in d["means"]]; W = [np.array(w) for w in d["roots"]]; c = d["shares"]
P = np.array(d["priorRootK"]); Q = np.array(d["priorRootS"]); mk, ms = d["meanK"], d["meanS"]
g, k2, f, sw = d["gain"], d["k2"], d["floor"], d["sd"]
N = 36
def residuals(x):
    kw, k, s, e = np.exp(x[:N]), np.exp(x[N:2*N]), np.exp(x[2*N:3*N]), x[3*N:]
    out = []; j = 0
    for i, share in enumerate(c):
        if 0 < share < 1:
            r = share/(1-share)*np.exp(sw*e[j]); cc = r/(1+r); j += 1
        else: cc = share
        q = (cc*k + (1-cc)*kw)/(cc*s + (1-cc))
        R = 1/(1 + q + np.sqrt(q*(q+2)))
        out.append(W[i] @ (y[i] - f - g*R/(1-k2*R)))
    out += [P @ (x[:N]-mk), P @ (x[N:2*N]-mk), Q @ (x[2*N:3*N]-ms), e]
    return np.concatenate(out)
x0 = np.array(d["start"])
t = []
for _ in range(5):
    a = time.perf_counter(); r = least_squares(residuals, x0, x_scale="jac", ftol=1e-8); t.append(time.perf_counter() - a)
print(json.dumps({"milliseconds": sorted(t)[2]*1e3, "cost": float(r.cost)}))
`;
  for (const python of ['python3', '/usr/bin/python3']) {
    const done = spawnSync(python, ['-c', program], { input: JSON.stringify(input), encoding: 'utf8' });
    if (done.status === 0) return JSON.parse(done.stdout) as { milliseconds: number; cost: number };
  }
  return undefined;
}

/** Upper triangular root U with U^T U = A, as rows. */
function rootRows(A: Float64Array, n: number): number[][] {
  const L = Float64Array.from(A);
  if (!choleskyInPlace(L, n)) throw new RangeError('The matrix is not positive definite.');
  return Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (__, j) => (j >= i ? L[j * n + i]! : 0)),
  );
}

export async function run(): Promise<BenchRow[]> {
  const { precisionOf, smoothnessPrior } = await import('../src/fit/model/smoothness.ts');
  const set = oneTube(fixture('transport-spectral'));
  const settings = SETTINGS.spectral;
  const read = fitProblem(set, { settings, estimate: [] });
  // Readings that clip at zero are left as they are in all three, so that the objective is one.
  const problem = { ...read, clipped: false };
  const start = startOf(problem);
  const weights = groupWeights(problem, start, sameDiscrepancy(problem, 0.01));
  const report = minimise(problem, weights, start, { ftol: 1e-8 });
  const own = timed(15, () => void minimise(problem, weights, start, { ftol: 1e-8 }));
  const rows: BenchRow[] = [
    {
      what: 'one tube, own solver',
      milliseconds: own,
      note: `${report.iterations} steps, cost ${report.cost.toFixed(3)}`,
    },
  ];

  const n = start.length;
  const gradientAt = (x: Float64Array): Float64Array => lineariseAt(problem, weights, x).system.gradient;
  let steps = 0;
  const byDifferences = timed(3, () => {
    const done = levenbergMarquardt(
      {
        cost: (x) => costAt(problem, weights, x),
        linearise: (x) => {
          // The Gauss-Newton matrix by differences of the gradient, one unknown at a time.
          const gradient = gradientAt(x);
          const H = new Float64Array(n * n);
          for (let i = 0; i < n; i++) {
            const moved = Float64Array.from(x);
            moved[i]! += 1e-6;
            gradientAt(moved).forEach((g, j) => (H[j * n + i] = (g - gradient[j]!) / 1e-6));
          }
          for (let i = 0; i < n; i++) {
            for (let j = 0; j < i; j++) H[i * n + j] = H[j * n + i] = (H[i * n + j]! + H[j * n + i]!) / 2;
          }
          return {
            cost: costAt(problem, weights, x),
            gradient,
            diagonal: Float64Array.from({ length: n }, (_, i) => Math.abs(H[i * n + i]!)),
            solve: (right, extra) => {
              const L = Float64Array.from(H);
              for (let i = 0; i < n; i++) L[i * n + i]! += extra[i]!;
              if (!choleskyInPlace(L, n)) return null;
              const h = Float64Array.from(right);
              forwardInPlace(L, n, h, 1);
              backwardInPlace(L, n, h, 1);
              return h;
            },
          };
        },
      },
      start,
      { ftol: 1e-8, maxStep: 2, maxIterations: 60 },
    );
    steps = done.iterations;
  });
  rows.push({
    what: 'one tube, slopes by differences',
    milliseconds: byDifferences,
    note: `${steps} steps; own solver is ${(byDifferences / own).toFixed(1)} times faster`,
  });

  const { layout, surface } = problem;
  const order = [layout.lnK[0]!, layout.lnK[1]!, layout.lnS[1]!];
  const errors = [...layout.errors].filter((place) => place >= 0);
  const K = smoothnessPrior(settings.k1st, settings.k2nd, settings.kLevel);
  const S = smoothnessPrior(settings.s1st, settings.s2nd, settings.sLevel);
  const scipy = scipyMilliseconds({
    means: problem.groups.map((g) => [...g.swatches[0]!.mean]),
    roots: weights.map((W) => rootRows(W, problem.channels)),
    shares: problem.groups.map(({ swatches }) => {
      const masses = swatches[0]!.swatch.masses!;
      const blue = masses[set.tubes[1]!.id] ?? 0;
      return blue / (blue + (masses[set.tubes[0]!.id] ?? 0));
    }),
    priorRootK: rootRows(precisionOf(K), 36),
    priorRootS: rootRows(precisionOf(S), 36),
    meanK: K.mean,
    meanS: S.mean,
    gain: surface.escape,
    k2: surface.k2,
    floor: surface.haze,
    sd: 0.03,
    start: [
      ...order.flatMap((at) => Array.from(start.subarray(at, at + 36))),
      ...errors.map((place) => start[place]!),
    ],
  });
  rows.push(
    scipy
      ? {
          what: 'one tube, scipy least_squares',
          milliseconds: scipy.milliseconds,
          note: `cost ${scipy.cost.toFixed(3)}; own solver is ${(scipy.milliseconds / own).toFixed(1)} times faster`,
        }
      : { what: 'one tube, scipy least_squares', milliseconds: NaN, note: 'python3 has no scipy here' },
  );

  for (const name of ['transport-spectral', 'transport-bands', 'transport-xyz', 'oil-ladders']) {
    const whole = fixture(name);
    const milliseconds = timed(name === 'oil-ladders' ? 1 : 3, () => void fitPalette(whole));
    rows.push({
      what: `${name}, everything`,
      milliseconds,
      note: `${whole.tubes.length} tubes, ${whole.swatches.length} swatches, with evidence`,
    });
  }
  return rows;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  for (const row of await run()) {
    console.log(`${row.what.padEnd(34)} ${row.milliseconds.toFixed(1).padStart(9)} ms  ${row.note}`);
  }
}
