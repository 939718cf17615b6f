/** Numbers from 0 to below 1 that are the same at every run: multiplicative congruential, 48271 modulo 2³¹ − 1. */
export function random(seed: number): () => number {
  const modulus = 2147483647
  let state = (seed % (modulus - 1)) + 1
  return () => {
    state = (state * 48271) % modulus
    return (state - 1) / (modulus - 1)
  }
}
