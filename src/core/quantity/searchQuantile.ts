/**
 * Smallest x in min..max with cdf(x) >= p, by bisection to the last bits. For distribution functions that have no
 * closed inverse; a jump is answered with the place of the jump.
 */
export function searchQuantile(cdf: (x: number) => number, min: number, max: number, p: number): number {
  if (cdf(min) >= p) return min
  let [low, high] = [min, max]
  for (let step = 0; step < 60 && high - low > 1e-14 * high; step++) {
    const middle = (low + high) / 2
    if (cdf(middle) >= p) high = middle
    else low = middle
  }
  return high
}
