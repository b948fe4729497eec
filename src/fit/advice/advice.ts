import type { Measurement } from './measurement.ts';

/** Mean CIEDE2000 within which mixtures hold the truth 95 times in 100, now and after a measurement. */
export interface Fall {
  readonly before: number;
  readonly after: number;
}

/** One possible next measurement and what it would buy. */
export interface Advice {
  readonly measurement: Measurement;
  /** Over mixtures that hold the tube. */
  readonly all: Fall;
  /** Of those by lightness: L* under 40, between, over 70; absent where there are none. */
  readonly darks?: Fall;
  readonly middles?: Fall;
  readonly lights?: Fall;
  /** Expected fall of the mean, CIEDE2000. */
  readonly gain: number;
  readonly sentence: string;
}
