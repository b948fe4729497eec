/**
 * Repeatable random numbers: the same seed gives the same practice session.
 * Uniform: Mulberry32 (public domain, Tommy Ettinger 2017). Normal: G. E. P. Box, M. E. Muller, "A note on the
 * generation of random normal deviates", Ann. Math. Statist. 29 (1958) 610-611, doi:10.1214/aoms/1177706645.
 */
export class SeededNoise {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** 0 <= u < 1. */
  uniform(): number {
    this.#state = (this.#state + 0x6d2b79f5) | 0;
    let t = Math.imul(this.#state ^ (this.#state >>> 15), 1 | this.#state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  }

  /** Integer from 0 to below `n`. */
  below(n: number): number {
    return Math.floor(this.uniform() * n);
  }

  /** Mean 0, standard deviation 1. */
  normal(): number {
    const u = 1 - this.uniform();
    return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * this.uniform());
  }
}
