import { say } from './sentences.ts';

/**
 * How much paint a family needs: area times film thickness times density, and something for the knife.
 */
export interface CanvasSettings {
  readonly widthCentimetres: number;
  readonly heightCentimetres: number;
  /** Thickness of the wet film, micrometres. */
  readonly filmMicrometres: number;
  /** Paint lost on knife, palette and brush, as a share of what is needed: 0.3 adds 30 %. */
  readonly loss: number;
}

/** A lean but covering brush film and a careful hand. Common practice, no source. */
export const CANVAS_SETTINGS: CanvasSettings = {
  widthCentimetres: 20,
  heightCentimetres: 25,
  filmMicrometres: 100,
  loss: 0.3,
};

/** Density taken for a tube whose density is not known, g/ml. Common practice, no source: oil paints run from about 1.1 to 2.4. */
export const ASSUMED_DENSITY = 1.6;

export interface Amount {
  /** Grams of each tube, by id. */
  readonly grams: Readonly<Record<string, number>>;
  readonly total: number;
  /** Tubes whose density was assumed. */
  readonly assumedDensity: readonly string[];
}

/**
 * Grams of each tube for a share of the canvas.
 * @param share of the canvas area, 0..1.
 * @param masses any masses of the recipe; only their ratios count. Volumes add: nothing is lost in mixing.
 * @param densities g/ml by tube id, where known.
 * @throws RangeError when the canvas or the recipe makes no sense.
 */
export function amountFor(
  share: number,
  masses: Readonly<Record<string, number>>,
  densities: Readonly<Record<string, number | undefined>>,
  canvas: CanvasSettings,
): Amount {
  refuseBadCanvas(canvas);
  const used = Object.entries(masses).filter(([, m]) => m > 0);
  const mass = used.reduce((sum, [, m]) => sum + m, 0);
  if (!(mass > 0) || !Number.isFinite(mass)) {
    throw new RangeError(say('no-paint'));
  }
  const volume = used.reduce((sum, [id, m]) => sum + m / (densities[id] ?? ASSUMED_DENSITY), 0);
  // 1 cm2 x 1 um = 1e-4 ml.
  const millilitres =
    share *
    canvas.widthCentimetres *
    canvas.heightCentimetres *
    canvas.filmMicrometres *
    1e-4 *
    (1 + canvas.loss);
  const total = (millilitres * mass) / volume;
  return {
    grams: Object.fromEntries(used.map(([id, m]) => [id, (total * m) / mass])),
    total,
    assumedDensity: used.filter(([id]) => densities[id] === undefined).map(([id]) => id),
  };
}

function refuseBadCanvas(canvas: CanvasSettings): void {
  const limits = [
    [say('canvas-width'), canvas.widthCentimetres, 1, 1000, 'cm'],
    [say('canvas-height'), canvas.heightCentimetres, 1, 1000, 'cm'],
    ['film', canvas.filmMicrometres, 1, 5000, 'micrometres'],
    ['loss', canvas.loss, 0, 5, say('times-needed')],
  ] as const;
  for (const [name, value, low, high, unit] of limits) {
    if (!(value >= low && value <= high)) {
      throw new RangeError(say('out-of-range', { name, value, unit, low, high, unitAgain: unit }));
    }
  }
}
