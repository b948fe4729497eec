import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { GRID_NM } from '../../src/colour/grid.ts';
import { chroma, hueDegrees, labOfReflectance } from '../../src/colour/lab.ts';
import { tristimulusWeights } from '../../src/colour/tristimulus.ts';
import { DEMO_NOTE, DEMO_RACK, DEMO_WHITE } from '../../src/device/practice/paints/demo-rack.ts';
import { tabledReflectance } from '../../src/device/practice/transfer/albedo-table.ts';
import { fresnelReflectance } from '../../src/device/practice/transfer/fresnel.ts';
import { halfSpaceReflectance } from '../../src/device/practice/transfer/half-space.ts';
import { hFunction } from '../../src/device/practice/transfer/h-function.ts';
import { gaussLegendre } from '../../src/device/practice/transfer/quadrature.ts';
import { transferReflectance } from '../../src/device/practice/transfer/transfer-reflectance.ts';
import { readJson, readTable } from '../fixtures/read-table.ts';
import {
  ENERGY_BALANCE,
  H_FUNCTION_TWO_ROUTES,
  H_TABLE_FROM_MEMORY,
  OTHER_TRANSFER_PROGRAM,
  PRINTED_5_DECIMALS,
  TRANSFER_QUADRATURE,
  TRANSFER_TABLE,
} from '../tolerances.ts';

const { nodes, weights } = gaussLegendre(48);
const integral = (f: (mu: number, i: number) => number): number =>
  nodes.reduce((sum, mu, i) => sum + weights[i]! * f(mu, i), 0);

/** H by its closed form, an integral that shares nothing with the iteration (Chandrasekhar, chapter V, eq. 39). */
function hByIntegral(albedo: number, mu: number): number {
  const q = gaussLegendre(400);
  let sum = 0;
  q.nodes.forEach((x, i) => {
    // t = tan(pi x / 2) maps 0..1 to 0..infinity.
    const t = Math.tan((Math.PI / 2) * x);
    const dt = (Math.PI / 2) * (1 + t * t);
    sum += (q.weights[i]! * dt * Math.log(1 - (albedo * Math.atan(t)) / t)) / (1 + mu * mu * t * t);
  });
  return Math.exp((-mu / Math.PI) * sum);
}

describe("Chandrasekhar's H-function", () => {
  it('is 1 everywhere when nothing scatters, and refuses an albedo outside 0..1', () => {
    expect(Array.from(hFunction(0, nodes, weights).atNodes)).toEqual(Array.from(nodes, () => 1));
    expect(() => hFunction(1.2, nodes, weights)).toThrow('between 0 and 1');
  });

  it('has the values of his table XI for a lossless medium (quoted from memory)', () => {
    const H = hFunction(1, nodes, weights);
    const printed: [number, number][] = [
      [0.1, 1.2474],
      [0.2, 1.4503],
      [0.5, 2.0128],
      [0.8, 2.5527],
      [1, 2.9078],
    ];
    for (const [mu, value] of printed) expect(Math.abs(H.at(mu) - value)).toBeLessThan(H_TABLE_FROM_MEMORY);
  });

  it('has the moments that follow from the theory: (2/w)(1 - sqrt(1 - w)), and 2/sqrt(3) when lossless', () => {
    for (const w of [0.1, 0.5, 0.9, 0.999, 1]) {
      const H = hFunction(w, nodes, weights).atNodes;
      expect(integral((_, i) => H[i]!)).toBeCloseTo((2 / w) * (1 - Math.sqrt(1 - w)), 9);
    }
    const H = hFunction(1, nodes, weights).atNodes;
    expect(integral((mu, i) => mu * H[i]!)).toBeCloseTo(2 / Math.sqrt(3), 9);
  });

  it('agrees with the closed-form integral', () => {
    for (const w of [0.2, 0.7, 0.95]) {
      const H = hFunction(w, nodes, weights);
      for (const mu of [0.1, 0.4, 0.7, 1]) {
        expect(Math.abs(H.at(mu) / hByIntegral(w, mu) - 1)).toBeLessThan(H_FUNCTION_TWO_ROUTES);
      }
    }
  });
});

describe('the boundary', () => {
  it('has the tabulated Fresnel constants at 0, 8 and 45 degrees', () => {
    for (const row of readTable('optics/fresnel_saunderson_constants_vs_n.csv')) {
      const n = Number(row['n']);
      for (const [column, degrees] of [
        ['k1_normal_incidence', 0],
        ['k1_8deg', 8],
        ['k1_45deg', 45],
      ] as const) {
        const R = fresnelReflectance(n, Math.cos((degrees * Math.PI) / 180));
        expect(Math.abs(R - Number(row[column]))).toBeLessThan(PRINTED_5_DECIMALS);
      }
    }
  });

  it('throws everything back beyond the critical angle', () => {
    expect(fresnelReflectance(1 / 1.5, 0.7)).toBe(1);
    expect(fresnelReflectance(1 / 1.5, 0.75)).toBeLessThan(1);
  });
});

describe('an opaque film by radiative transfer', () => {
  it('gives back all light when lossless: body and specular together are 1 at any index', () => {
    for (const n of [1, 1.33, 1.5, 1.7]) {
      expect(Math.abs(halfSpaceReflectance(1, n, 'd/8 specular included') - 1)).toBeLessThan(ENERGY_BALANCE);
    }
  });

  it('is the bare surface when nothing scatters: 0 at 45/0, the Fresnel share specular included', () => {
    expect(halfSpaceReflectance(0, 1.5, '45/0')).toBe(0);
    const F8 = fresnelReflectance(1.5, Math.cos((8 * Math.PI) / 180));
    expect(halfSpaceReflectance(0, 1.5, 'd/8 specular included')).toBeCloseTo(F8, 12);
    expect(halfSpaceReflectance(0, 1.5, 'd/8 specular excluded')).toBe(0);
  });

  it('without a boundary is the diffuse reflection law: R = (w/4) H(1) H(mu0) / (1 + mu0) x 1', () => {
    // Chandrasekhar, chapter III: I(mu) = (w/4) F H(mu) H(mu0) mu0/(mu + mu0); reflectance factor I/(F mu0).
    const mu0 = Math.SQRT1_2;
    for (const w of [0.3, 0.8, 1]) {
      const H = hFunction(w, nodes, weights);
      const law = ((w / 4) * H.at(1) * H.at(mu0)) / (1 + mu0);
      expect(Math.abs(halfSpaceReflectance(w, 1, '45/0') - law)).toBeLessThan(TRANSFER_QUADRATURE);
    }
  });

  it('rises with the albedo in every geometry', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        fc.double({ min: 1e-4, max: 1e-3, noNaN: true }),
        (w, step) => {
          for (const g of ['45/0', 'd/8 specular included', 'd/8 specular excluded'] as const) {
            expect(tabledReflectance(w + step, 1.5, g)).toBeGreaterThan(tabledReflectance(w, 1.5, g));
          }
        },
      ),
      { numRuns: 100 },
    );
  });

  it('read from the table is off from a direct solution by less than the stated error', () => {
    for (const g of ['45/0', 'd/8 specular included'] as const) {
      for (let i = 0; i <= 60; i++) {
        const w = 1 - (i / 60) ** 3;
        const direct = halfSpaceReflectance(w, 1.45, g);
        expect(Math.abs(tabledReflectance(w, 1.45, g) - direct)).toBeLessThan(TRANSFER_TABLE);
      }
    }
  });
});

describe('mixtures', () => {
  const view = { geometry: '45/0' } as const;
  const index = fc.integer({ min: 0, max: DEMO_RACK.length - 1 });
  const mass = fc.double({ min: 0.01, max: 10, noNaN: true });

  it('refuses no paint at all and a negative mass, each in one sentence', () => {
    expect(() => transferReflectance([], view)).toThrow('at least one paint');
    expect(() => transferReflectance([{ paint: DEMO_WHITE, mass: -1 }], view)).toThrow('give zero or more');
  });

  it('know only ratios, not the order, and a paint mixed with itself is that paint', () => {
    fc.assert(
      fc.property(index, index, mass, mass, (i, j, m, n) => {
        const [p, q] = [DEMO_RACK[i]!, DEMO_RACK[j]!];
        const R = transferReflectance(
          [
            { paint: p, mass: m },
            { paint: q, mass: n },
          ],
          view,
        );
        const swapped = transferReflectance(
          [
            { paint: q, mass: 3 * n },
            { paint: p, mass: 3 * m },
          ],
          view,
        );
        const alone = transferReflectance([{ paint: p, mass: m }], view);
        const twice = transferReflectance(
          [
            { paint: p, mass: m },
            { paint: p, mass: n },
          ],
          view,
        );
        R.forEach((r, k) => expect(swapped[k]).toBeCloseTo(r, 9));
        alone.forEach((r, k) => expect(twice[k]).toBeCloseTo(r, 9));
      }),
      { numRuns: 30 },
    );
  });

  it('lie between their components at every wavelength', () => {
    fc.assert(
      fc.property(index, index, mass, mass, (i, j, m, n) => {
        const parts = [
          { paint: DEMO_RACK[i]!, mass: m },
          { paint: DEMO_RACK[j]!, mass: n },
        ];
        const [a, b] = parts.map((part) => transferReflectance([part], view));
        transferReflectance(parts, view).forEach((r, k) => {
          expect(r).toBeGreaterThanOrEqual(Math.min(a![k]!, b![k]!) - 1e-9);
          expect(r).toBeLessThanOrEqual(Math.max(a![k]!, b![k]!) + 1e-9);
        });
      }),
      { numRuns: 30 },
    );
  });

  it('get darker when the white is crowded', () => {
    const loose = transferReflectance([{ paint: DEMO_WHITE, mass: 1 }], view);
    const crowded = transferReflectance([{ paint: DEMO_WHITE, mass: 1 }], { ...view, crowding: 0.15 });
    expect(GRID_NM.every((_, k) => crowded[k]! < loose[k]!)).toBe(true);
  });
});

describe('transfer paints made by another program (tests/fixtures/paint/transport-spectral.json)', () => {
  it('are explained at 580 nm by this one: 11 coefficients for 120 mixtures', () => {
    const set = readJson('paint/transport-spectral.json') as {
      tubes: { id: string }[];
      checks: { masses: Record<string, number>; truth: number[] }[];
    };
    // Found by least squares on these 120 values, white's scattering 1.
    const absorbs = [0.0017, 1.5795, 1.1921, 0.0097, 1.8021, 3.0991];
    const scatters = [1, 0.0503, 0.2044, 0.3558, 0.062, 0.0518];
    for (const { masses, truth } of set.checks) {
      let [A, S] = [0, 0];
      set.tubes.forEach(({ id }, i) => {
        A += (masses[id] ?? 0) * absorbs[i]!;
        S += (masses[id] ?? 0) * scatters[i]!;
      });
      const R = tabledReflectance(S / (S + A), 1.5, '45/0');
      expect(Math.abs(R - truth[GRID_NM.indexOf(580)]!)).toBeLessThan(OTHER_TRANSFER_PROGRAM);
    }
  });
});

describe('the demo rack', () => {
  const w = tristimulusWeights('D65/10deg');
  const look = (id: string, white: number) => {
    const paint = DEMO_RACK.find((p) => p.id === id)!;
    const lab = labOfReflectance(
      transferReflectance(
        [
          { paint, mass: 1 },
          { paint: DEMO_WHITE, mass: white },
        ],
        { geometry: '45/0' },
      ),
      w,
    );
    return { L: lab.L, C: chroma(lab), h: hueDegrees(lab) };
  };

  it('says that it is invented, and names every paint by Colour Index generic name', () => {
    expect(DEMO_NOTE).toMatch(/invented/i);
    expect(new Set(DEMO_RACK.map((p) => p.id)).size).toBe(DEMO_RACK.length);
    for (const p of DEMO_RACK) {
      expect(p.label).toMatch(/^Demo /);
      expect(p.pigments.every((code) => /^P(W|Y|R|B|G|Bk|Br|V|O)\d+$/.test(code))).toBe(true);
      expect(p.absorption.every((a) => a > 0) && p.scattering.every((s) => s > 0)).toBe(true);
    }
    expect(DEMO_RACK.filter((p) => p.role === 'white')).toEqual([DEMO_WHITE]);
  });

  // Where such colours lie on a painter's table: common practice, no source.
  it.each([
    ['demo-white', 0, [94, 99], [0, 5], [0, 360]],
    ['demo-bone-black', 0, [0, 10], [0, 3], [0, 360]],
    ['demo-warm-yellow', 0, [68, 85], [80, 110], [70, 95]],
    ['demo-yellow-earth', 0, [40, 55], [40, 60], [65, 80]],
    ['demo-red-earth', 0, [25, 40], [30, 50], [30, 50]],
    ['demo-deep-blue', 0, [3, 20], [20, 60], [280, 310]],
    ['demo-deep-blue', 4, [40, 60], [40, 65], [270, 295]],
    ['demo-strong-blue', 0, [3, 20], [10, 40], [240, 275]],
    ['demo-strong-blue', 16, [40, 60], [35, 55], [230, 250]],
    ['demo-cold-green', 16, [50, 70], [40, 60], [165, 190]],
  ] as const)('%s with %d parts of white looks as it should', (id, white, L, C, h) => {
    const seen = look(id, white);
    expect(seen.L).toBeGreaterThan(L[0]);
    expect(seen.L).toBeLessThan(L[1]);
    expect(seen.C).toBeGreaterThanOrEqual(C[0]);
    expect(seen.C).toBeLessThan(C[1]);
    expect(seen.h).toBeGreaterThanOrEqual(h[0]);
    expect(seen.h).toBeLessThan(h[1]);
  });
});
