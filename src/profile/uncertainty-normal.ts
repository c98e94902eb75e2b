/**
 * Share of a normal distribution (mean 0, deviation 1) below z: the power series of the error
 * function near the middle, its continued fraction beyond (Handbook of Mathematical Functions, 26.2.10
 * and 26.2.14; from memory).
 */
export function normalBelow(z: number): number {
  if (z === Number.POSITIVE_INFINITY) return 1;
  if (z === Number.NEGATIVE_INFINITY) return 0;
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  if (Math.abs(z) < 4) {
    let [term, sum] = [z, z];
    for (let n = 1; Math.abs(term) > 1e-17; n++) {
      term *= (z * z) / (2 * n + 1);
      sum += term;
    }
    return 0.5 + density * sum;
  }
  const size = Math.abs(z);
  let fraction = size;
  for (let n = 40; n > 0; n--) fraction = size + n / fraction;
  return z < 0 ? density / fraction : 1 - density / fraction;
}
