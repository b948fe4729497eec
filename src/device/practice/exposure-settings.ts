/** What the practice sensor can be set to: the gains, clock and full scale of an AS7341-class sensor. */
export const GAINS: readonly number[] = [0.5, 1, 2, 4, 8, 16, 32, 64, 128, 256, 512];

/** ATIME is kept at 99: a pass takes 100 x (ASTEP + 1) x 2.78 us, and full scale is 100 x (ASTEP + 1) counts. */
const STEP_S = 100 * 2.78e-6;
const FEWEST_STEPS = 18;
const MOST_STEPS = 2878;

export const APERTURE = {
  min: FEWEST_STEPS * STEP_S,
  max: MOST_STEPS * STEP_S,
  default: 655 * STEP_S,
};

export class ExposureSettings {
  gain = 64;
  averages = 1;
  lampStays = false;
  buttonTriggers = false;
  #steps = 655;

  /** Rounds to the sensor's own steps. */
  setAperture(seconds: number): void {
    this.#steps = Math.min(MOST_STEPS, Math.max(FEWEST_STEPS, Math.round(seconds / STEP_S)));
  }

  get apertureS(): number {
    return this.#steps * STEP_S;
  }

  get fullScale(): number {
    return Math.min(65_535, 100 * this.#steps);
  }

  reset(): void {
    this.gain = 64;
    this.averages = 1;
    this.lampStays = false;
    this.buttonTriggers = false;
    this.#steps = 655;
  }
}
