import { describe, expect, it } from 'vitest';
import { Matrix, solve } from 'ml-matrix';
import { GRID_NM, flatSpectrum } from '../../src/colour/grid.ts';
import { DEMO_CARD_BLACK, DEMO_CARD_WHITE } from '../../src/device/practice/paints/demo-card.ts';
import { DEMO_DEEP_BLUE, DEMO_RED_EARTH, DEMO_WHITE } from '../../src/device/practice/paints/demo-rack.ts';
import { beamDirections, gaussRadau } from '../../src/device/practice/transfer/beam-directions.ts';
import {
  bareCardReflectance,
  filmReflectance,
  layerReflectance,
} from '../../src/device/practice/transfer/film.ts';
import { halfSpaceReflectance } from '../../src/device/practice/transfer/half-space.ts';
import { slab } from '../../src/device/practice/transfer/slab.ts';
import { transferReflectance } from '../../src/device/practice/transfer/transfer-reflectance.ts';
import { PRINTED_6_DECIMALS, SAME_ARITHMETIC, TWO_TRANSFER_METHODS } from '../tolerances.ts';

const GEOMETRIES = ['45/0', 'd/8 specular included', 'd/8 specular excluded'] as const;
const view = { geometry: '45/0' } as const;

describe('Gauss-Radau nodes', () => {
  it('hold their end, sum to 1, and are exact for polynomials up to degree 2n - 2', () => {
    for (const count of [3, 5, 10]) {
      const { nodes, weights } = gaussRadau(count);
      expect(nodes.at(-1)).toBe(1);
      for (let degree = 0; degree <= 2 * count - 2; degree++) {
        const sum = nodes.reduce((s, x, i) => s + weights[i]! * x ** degree, 0);
        expect(Math.abs(sum - 1 / (degree + 1))).toBeLessThan(SAME_ARITHMETIC);
      }
    }
  });
});

describe('a layer', () => {
  it('so thick that it hides reads as the half-space does, by another method altogether', () => {
    for (const geometry of GEOMETRIES) {
      for (const w of [0.05, 0.5, 0.9, 0.999]) {
        const film = layerReflectance(w, 1e5, 0.5, 1.5, geometry);
        expect(Math.abs(film - halfSpaceReflectance(w, 1.5, geometry))).toBeLessThan(TWO_TRANSFER_METHODS);
      }
    }
  });

  it('of no thickness is the bare card, by the exact 45/0 surface equation: .5 inside reads .288697', () => {
    expect(Math.abs(layerReflectance(0.7, 0, 0.5, 1.5, '45/0') - 0.288697)).toBeLessThan(PRINTED_6_DECIMALS);
  });

  it('that loses no light on a card that loses none gives all of it back', () => {
    for (const tau of [0.01, 1, 30]) {
      expect(Math.abs(layerReflectance(1, tau, 1, 1.5, 'd/8 specular included') - 1)).toBeLessThan(1e-6);
    }
  });

  it('laid twice is the layer of double thickness', () => {
    const { mu, weights } = beamDirections(1.5, Math.SQRT1_2);
    const [one, two] = [slab(0.8, 0.7, mu, weights), slab(0.8, 1.4, mu, weights)];
    const between = Matrix.sub(Matrix.eye(mu.length, mu.length), one.up.mmul(one.up));
    const through = one.through.mmul(solve(between, one.through));
    const up = Matrix.add(one.up, one.through.mmul(one.up).mmul(solve(between, one.through)));
    expect(Matrix.sub(through, two.through).abs().max()).toBeLessThan(TWO_TRANSFER_METHODS);
    expect(Matrix.sub(up, two.up).abs().max()).toBeLessThan(TWO_TRANSFER_METHODS);
  });

  it('that does not scatter dims the card as Beer and Lambert have it, in and out', () => {
    const [thin, bare] = [
      layerReflectance(0, 0.05, 0.001, 1.5, '45/0'),
      layerReflectance(0, 0, 0.001, 1.5, '45/0'),
    ];
    const inside = Math.sqrt(1 - 0.5 / 1.5 ** 2);
    // A card so dark that light does not come back to it a second time.
    expect(thin / bare / Math.exp(-0.05 * (1 + 1 / inside))).toBeCloseTo(1, 3);
  });
});

describe('a film on the demo card', () => {
  const over = (thickness: number, paint = DEMO_WHITE) =>
    filmReflectance([{ paint, mass: 1 }], { thickness, backings: [DEMO_CARD_BLACK, DEMO_CARD_WHITE] }, view);

  it('is refused when it has no thickness', () => {
    expect(() => over(0)).toThrow('thicker than 0 um');
  });

  it('reads lighter over white than over black, and the two close in as it thickens', () => {
    const gaps = [20, 60, 200].map((thickness) => {
      const [black, white] = over(thickness);
      expect(GRID_NM.every((_, i) => white![i]! >= black![i]! - SAME_ARITHMETIC)).toBe(true);
      return white![20]! - black![20]!;
    });
    expect(gaps[0]).toBeGreaterThan(gaps[1]!);
    expect(gaps[1]).toBeGreaterThan(gaps[2]!);
  });

  it('hides, when thick, and reads as the opaque film does', () => {
    const [black, white] = over(5000, DEMO_RED_EARTH);
    const opaque = transferReflectance([{ paint: DEMO_RED_EARTH, mass: 1 }], view);
    opaque.forEach((R, i) => {
      expect(Math.abs(black![i]! - R)).toBeLessThan(1e-5);
      expect(Math.abs(white![i]! - R)).toBeLessThan(1e-5);
    });
  });

  it('of the deep blue is a glaze when thin: bluer over white than its masstone', () => {
    const [, white] = over(10, DEMO_DEEP_BLUE);
    const masstone = transferReflectance([{ paint: DEMO_DEEP_BLUE, mass: 1 }], view);
    expect(white![7]!).toBeGreaterThan(2 * masstone[7]!);
  });

  it('leaves the bare card black and white, as a head sees it', () => {
    // Sealed charts: black at most 1 %, white at least 78 % (ASTM D2805).
    expect(Math.max(...bareCardReflectance(DEMO_CARD_BLACK, view))).toBeLessThan(0.01);
    const white = bareCardReflectance(DEMO_CARD_WHITE, view);
    expect(Math.min(...white.slice(5))).toBeGreaterThan(0.78);
    expect(bareCardReflectance(flatSpectrum(0), view)[0]).toBe(0);
  });
});
