import type { SeededNoise } from './seeded-noise.ts';
import { seen } from './sensor.ts';
import type { PracticeChannel, PracticeSensor } from './sensor.ts';
import { trueReflectance } from './surfaces.ts';
import type { PracticeSurface } from './surfaces.ts';

/** How the practice head departs from a perfect one. All sizes are estimates for a self-built head, not measured. */
export interface PracticeTraits {
  /** Share of light missing at power-on; fades with `warmUpSeconds`. Default 0.02. */
  readonly warmUp: number;
  /** Time constant of the warm-up, s. Default 15. */
  readonly warmUpSeconds: number;
  /** Slow fall of the lamp, share per hour. Default 0.004. */
  readonly driftPerHour: number;
  /** Standard deviation of the grey factor drawn each time a surface is placed. Default 0.0015. */
  readonly placement: number;
  /** Standard deviation of the count noise at full white, as a share of it; goes with the root of the count. Default 0.0006. */
  readonly shot: number;
  /** Read noise, counts. Default 1.5. */
  readonly readNoise: number;
  /** Mean of the dark level, counts at gain 64. Default 9. */
  readonly dark: number;
  /** Light that comes back inside the head without touching the surface, share of a perfect white. Default 0.004. */
  readonly flare: number;
  /** Room light that gets under the head on anything but the trap, share of a perfect white. Default 0. */
  readonly ambientLeak: number;
  /** How far the head is lifted off its surface by shims, mm. Default 0. */
  readonly liftMm: number;
  /** Share of light lost for each 0.1 mm of lift. Default 0.003. */
  readonly lossPerTenthMm: number;
  /** How far each doubling or halving of the gain from 64 misses its nominal step, as a share. Default 0.008. */
  readonly gainStepError: number;
}

export const PRACTICE_TRAITS: PracticeTraits = {
  warmUp: 0.02,
  warmUpSeconds: 15,
  driftPerHour: 0.004,
  placement: 0.0015,
  shot: 0.0006,
  readNoise: 1.5,
  dark: 9,
  flare: 0.004,
  ambientLeak: 0,
  liftMm: 0,
  lossPerTenthMm: 0.003,
  gainStepError: 0.008,
};

/** Nothing random and nothing drifting: for tests that compare numbers. */
export const STILL_TRAITS: PracticeTraits = {
  ...PRACTICE_TRAITS,
  warmUp: 0,
  driftPerHour: 0,
  placement: 0,
  shot: 0,
  readNoise: 0,
  gainStepError: 0,
};

/** Counts per ms at gain 1 of a perfect white in the strongest channel: the tile comes to 70 % of full scale at gain 64, 182 ms. */
export const FLUX = 4.5;
const TYPICAL_WHITE = 46_000;

export interface Exposure {
  readonly gain: number;
  readonly apertureMs: number;
  readonly averages: number;
  readonly lamp: boolean;
  /** Since power-on, s. */
  readonly seconds: number;
}

/** What reaches the sensor, and the counts it makes of it. */
export class PracticeLight {
  readonly #sensor: PracticeSensor;
  readonly #noise: SeededNoise;
  #traits: PracticeTraits;
  #surface: PracticeSurface = { kind: 'white-tile' };
  #placed = 1;

  constructor(sensor: PracticeSensor, noise: SeededNoise, traits: PracticeTraits) {
    this.#sensor = sensor;
    this.#noise = noise;
    this.#traits = traits;
  }

  get surface(): PracticeSurface {
    return this.#surface;
  }

  /** Lays a surface under the head: the distance comes out a little different each time. */
  place(surface: PracticeSurface): void {
    this.#surface = surface;
    this.#placed = 1 + this.#traits.placement * this.#noise.normal();
  }

  setTraits(traits: Partial<PracticeTraits>): void {
    this.#traits = { ...this.#traits, ...traits };
  }

  /** Lamp power against its settled value. */
  lampPower(seconds: number): number {
    const { warmUp, warmUpSeconds, driftPerHour } = this.#traits;
    return 1 - warmUp * Math.exp(-seconds / warmUpSeconds) - (driftPerHour * seconds) / 3600;
  }

  isSettling(seconds: number): boolean {
    return this.#traits.warmUp * Math.exp(-seconds / this.#traits.warmUpSeconds) > 0.001;
  }

  /** Counts of every channel, mean of the averages, before clipping at full scale. */
  counts(exposure: Exposure): number[] {
    return this.#sensor.channels.map((channel, i) => {
      const mean = this.#meanCounts(channel, i, exposure);
      const { shot, readNoise } = this.#traits;
      const sd = Math.hypot(shot * Math.sqrt(mean * TYPICAL_WHITE), readNoise) / Math.sqrt(exposure.averages);
      const step = exposure.averages === 1 ? 1 : 100; // one decimal place or two is what averaging is for
      return Math.max(0, Math.round((mean + sd * this.#noise.normal()) * step) / step);
    });
  }

  #meanCounts(channel: PracticeChannel, index: number, exposure: Exposure): number {
    const { flare, ambientLeak, dark, liftMm, lossPerTenthMm, gainStepError } = this.#traits;
    const gain = exposure.gain * (1 + gainStepError * Math.log2(exposure.gain / 64));
    const basic = FLUX * gain * exposure.apertureMs;
    const lifted = 1 - 10 * liftMm * lossPerTenthMm;
    const lit = exposure.lamp ? this.lampPower(exposure.seconds) * lifted : 0;
    const fromSurface = seen(channel, trueReflectance(this.#surface)) * this.#placed;
    const leak =
      this.#surface.kind === 'black-trap'
        ? 0
        : ambientLeak * (0.6 + (0.8 * index) / this.#sensor.channels.length);
    const light = basic * channel.strength * (lit * (fromSurface + flare) + leak);
    return light + dark * (0.6 + 0.4 * (exposure.gain / 64)) + (index % 3) * 0.7;
  }
}
