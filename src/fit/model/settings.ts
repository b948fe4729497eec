import type { InstrumentDescription } from '../../calibrate/swatch-set/schema.ts';

/**
 * Widths of the priors. All are in natural logarithms per 10 nm step unless said otherwise; docs/method.md gives the
 * reason for each.
 */
export interface FitSettings {
  /** First and second differences of ln K and ln S. */
  readonly k1st: number;
  readonly k2nd: number;
  readonly s1st: number;
  readonly s2nd: number;
  /** Level of ln K and ln S: mean and standard deviation. */
  readonly kLevel: readonly [number, number];
  readonly sLevel: readonly [number, number];
  /** First and second differences of the white's ln S, where films of finite thickness let it be seen. */
  readonly white1st: number;
  readonly white2nd: number;
  /** Standard deviation of k2 about theory, and of the floor (haze) by geometry, reflectance. */
  readonly k2Sd: number;
  readonly floorSd: number;
  /** Standard deviation of the white's crowding about 0. */
  readonly crowdingSd: number;
  /** Spread of ln thickness between drawdowns of one session, and of a thickness that was given. */
  readonly thicknessSd: number;
  readonly givenThicknessSd: number;
  /** What the equations miss, in ln(K/S) of every pile: standard deviation (sized from the readings where absent) and
   * correlation length. */
  readonly discrepancySd?: number;
  readonly correlationNm: number;
  /** Haze from film to film, reflectance factor; sized from the readings where absent. */
  readonly hazeSd?: number;
}

const COMMON = {
  k1st: 0.4,
  k2nd: 0.4,
  kLevel: [-1, 5] as const,
  sLevel: [-1.6, 3] as const,
  white1st: 0.1,
  white2nd: 0.05,
  k2Sd: 0.035,
  floorSd: 0.002,
  crowdingSd: 0.1,
  thicknessSd: 0.3,
  givenThicknessSd: 0.1,
  correlationNm: 60,
};

/**
 * Scattering of a fine powder goes as a power 0 to -1.5 of wavelength, so ln S moves by at most 0.03 in 10 nm but near a
 * strong absorption. Readings of 10 nm see that for themselves and are given room; XYZ cannot, and a smooth S is what
 * makes its ladders mean something. In bands, ln K is bridged as the spectra of real oil paints run (root mean square 0.26
 * and 0.09 in their first and second differences), with room for sharper ones.
 */
export const SETTINGS: Readonly<Record<InstrumentDescription['kind'], FitSettings>> = {
  spectral: { ...COMMON, s1st: 0.15, s2nd: 0.06 },
  bands: { ...COMMON, k1st: 0.6, k2nd: 0.3, s1st: 0.06, s2nd: 0.025 },
  tristimulus: { ...COMMON, s1st: 0.06, s2nd: 0.025 },
};
