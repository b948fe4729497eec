/**
 * Swatch sets of paints invented from a seed, read through radiative transfer: smooth or sharp bands, a white that
 * crowds, another index, and spectral, band or XYZ readings. Checks carry noise-free truth.
 */
import { readSwatchSet } from '../../src/calibrate/swatch-set/read.ts';
import type { SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import { GRID_NM, type Spectrum } from '../../src/colour/grid.ts';
import {
  type TransferPaint,
  transferReflectance,
} from '../../src/device/practice/transfer/transfer-reflectance.ts';
import { readingOf, responseRows } from '../../src/fit/observe/response-rows.ts';

export interface InventedOptions {
  readonly kind?: 'spectral' | 'bands' | 'tristimulus';
  readonly sharp?: boolean;
  readonly crowding?: number;
  readonly index?: number;
  readonly tubes?: number;
  readonly noise?: number;
  readonly weighing?: number;
  /** Multiplies the ratio of one rung, by its id: a mistake at the scale. */
  readonly wrong?: Readonly<Record<string, number>>;
  /** Piles painted and read after the ladders, by masses; the ladders' own readings stay as they are. */
  readonly extra?: readonly Readonly<Record<string, number>>[];
  /** Spots read once more at the end, three each, by swatch id. */
  readonly again?: readonly string[];
  /** Changes readings before they are kept: a fingerprint, a wet film. */
  readonly spoil?: (id: string, reading: number[]) => number[];
}

const BANDS = [
  [415, 26],
  [445, 30],
  [480, 36],
  [515, 39],
  [555, 39],
  [590, 40],
  [630, 50],
  [680, 52],
] as const;

/** Mulberry32, a public-domain generator by T. Ettinger; normal numbers by Box and Muller. */
export function randomFrom(seed: number): { readonly even: () => number; readonly normal: () => number } {
  let a = seed >>> 0;
  const even = (): number => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    even,
    normal: () => Math.sqrt(-2 * Math.log(even() + 1e-300)) * Math.cos(2 * Math.PI * even()),
  };
}

function inventPaints(seed: number, count: number, sharp: boolean): TransferPaint[] {
  const { even } = randomFrom(seed * 7919 + 13);
  const on = (f: (nm: number) => number): Spectrum => Float64Array.from(GRID_NM, f);
  const edgeUv = 0.15 + 0.3 * even();
  const white: TransferPaint = {
    id: 'white',
    label: 'white',
    role: 'white',
    pigments: [],
    absorption: on((nm) => 0.0008 + edgeUv / (1 + Math.exp((nm - 392) / 7))),
    scattering: on((nm) => (500 / nm) ** 0.4),
  };
  const colours = Array.from({ length: count }, (_, t): TransferPaint => {
    const strength = Math.exp(-1 + 2.2 * even());
    const base = strength * Math.exp(-4 + 2.5 * even());
    const bands = Array.from({ length: 1 + Math.floor(even() * 3) }, () => ({
      centre: 390 + 330 * even(),
      width: sharp ? 8 + 14 * even() : 25 + 40 * even(),
      height: strength * (0.3 + even()),
    }));
    const scatter = Math.exp(-2.8 + 2.4 * even());
    const slope = -0.8 + 1.4 * even();
    return {
      id: `paint-${t + 1}`,
      label: `paint ${t + 1}`,
      pigments: [],
      absorption: on((nm) =>
        bands.reduce((a, b) => a + b.height * Math.exp(-0.5 * ((nm - b.centre) / b.width) ** 2), base),
      ),
      scattering: on((nm) => scatter * (nm / 550) ** slope),
    };
  });
  return [white, ...colours];
}

export function inventedSet(seed: number, options: InventedOptions = {}): SwatchSet {
  const { kind = 'spectral', tubes = 4, noise = 0.002, weighing = 0.03 } = options;
  const [white, ...colours] = inventPaints(seed, tubes, options.sharp ?? false) as [
    TransferPaint,
    ...TransferPaint[],
  ];
  const { normal } = randomFrom(seed * 104729 + 1);
  const view = {
    geometry: '45/0' as const,
    refractiveIndex: options.index ?? 1.5,
    crowding: options.crowding ?? 0,
  };
  const common = { geometry: '45/0' as const };
  const instrument =
    kind === 'spectral'
      ? { ...common, kind, wavelengths: [...GRID_NM] }
      : kind === 'bands'
        ? { ...common, kind, bands: BANDS.map(([centre, fwhm]) => ({ centre, fwhm })) }
        : { ...common, kind, illuminant: 'D65', observer: '2deg' };
  const rows = responseRows(instrument);
  const read = (parts: Parameters<typeof transferReflectance>[0]): number[][] => {
    const reading = readingOf(rows, transferReflectance(parts, view));
    return [1, 2, 3].map(() => Array.from(reading, (v) => v + noise * normal()));
  };
  const swatches: { id: string; masses: Record<string, number>; readings: number[][] }[] = [
    { id: 'white-masstone', masses: { white: 2 }, readings: read([{ paint: white, mass: 1 }]) },
  ];
  for (const paint of colours) {
    swatches.push({
      id: `${paint.id}-masstone`,
      masses: { [paint.id]: 2 },
      readings: read([{ paint, mass: 1 }]),
    });
    for (const ratio of [1, 4, 16]) {
      const id = `${paint.id}-1:${ratio}`;
      const mass = Math.exp(weighing * normal()) * (options.wrong?.[id] ?? 1);
      swatches.push({
        id,
        masses: { [paint.id]: 1, white: ratio },
        readings: read([
          { paint, mass },
          { paint: white, mass: ratio },
        ]),
      });
    }
  }
  const known = [white, ...colours];
  for (const id of options.again ?? []) {
    const swatch = swatches.find((s) => s.id === id)!;
    const parts = Object.entries(swatch.masses).map(([tube, mass]) => ({
      paint: known.find((p) => p.id === tube)!,
      mass,
    }));
    swatch.readings.push(...read(parts));
  }
  (options.extra ?? []).forEach((masses, i) => {
    const parts = Object.entries(masses).map(([tube, mass]) => ({
      paint: known.find((p) => p.id === tube)!,
      mass,
    }));
    if (parts.length > 1) parts[0]!.mass *= Math.exp(weighing * normal());
    swatches.push({ id: `extra-${i + 1}`, masses: { ...masses }, readings: read(parts) });
  });
  if (options.spoil) {
    for (const swatch of swatches) swatch.readings = swatch.readings.map((r) => options.spoil!(swatch.id, r));
  }
  const checks = colours.flatMap((a, i) =>
    colours.slice(i + 1).flatMap((b) =>
      [0.25, 0.5, 0.75].flatMap((f) =>
        [0, 0.3, 0.7, 0.9].map((w) => ({
          id: `${a.id}+${b.id}-${f}-${w}`,
          masses: { [a.id]: f * (1 - w), [b.id]: (1 - f) * (1 - w), ...(w ? { white: w } : {}) },
          truth: Array.from(
            transferReflectance(
              [
                { paint: a, mass: f * (1 - w) },
                { paint: b, mass: (1 - f) * (1 - w) },
                { paint: white, mass: w },
              ],
              view,
            ),
          ),
        })),
      ),
    ),
  );
  return readSwatchSet({
    format: 'swatch-set',
    version: 1,
    title: `invented paints, seed ${seed}`,
    instrument,
    weighing: { relativeSigma: weighing },
    noise: { sigma: noise },
    tubes: [white, ...colours].map(({ id, role }) => (role ? { id, role } : { id })),
    swatches,
    checks,
  });
}
