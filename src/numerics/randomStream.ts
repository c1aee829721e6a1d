/**
 * Numbers between 0 and 1 that look random and are the same for the same seed.
 *
 * Source: G. L. Steele, D. Lea, C. H. Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014 (32-bit form of
 * its mixing step, from memory; what is asked of it here, even spread and no memory, is tested).
 */
export function randomStream(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let x = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    x = Math.imul(x ^ (x >>> 15), 0x735a2d97);
    return (((x ^ (x >>> 15)) >>> 0) + 0.5) / 2 ** 32;
  };
}
