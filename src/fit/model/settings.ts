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
  /** What the equations miss, in ln(K/S) of every pile: standard deviation and correlation length. */
  readonly discrepancySd: number;
  readonly correlationNm: number;
}

export const DEFAULT_SETTINGS: FitSettings = {
  k1st: 1,
  k2nd: 0.25,
  s1st: 0.3,
  s2nd: 0.1,
  kLevel: [-1, 5],
  sLevel: [-1.6, 3],
  white1st: 0.1,
  white2nd: 0.05,
  k2Sd: 0.05,
  floorSd: 0.002,
  crowdingSd: 0.1,
  thicknessSd: 0.5,
  givenThicknessSd: 0.1,
  discrepancySd: 0.015,
  correlationNm: 60,
};
