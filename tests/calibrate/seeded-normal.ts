/**
 * Standard normal numbers from a seed, the same on every machine: mulberry32 (public domain) and the Box-Muller
 * transform (G. E. P. Box and M. E. Muller, Ann. Math. Stat. 29 (1958) 610-611).
 */
export function seededNormal(seed: number): () => number {
  const uniform = seededUniform(seed);
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** Uniform on 0 up to 1. */
export function seededUniform(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = a;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}
