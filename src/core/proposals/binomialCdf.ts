/**
 * Distribution function of the binomial distribution at every count: the k-th member is P(B <= k), k = 0 … n.
 *
 *   P(B = 0) = (1 - p)^n,   P(B = k + 1) = P(B = k) (n - k)/(k + 1) p/(1 - p)
 *
 * in logarithms, so that it holds for any n. A test holds it against the incomplete beta function of Cephes to 1e-11.
 * @param p more than 0, less than 1
 */
export function binomialCdf(n: number, p: number): Float64Array {
  const cdf = new Float64Array(n + 1)
  const odds = Math.log(p) - Math.log1p(-p)
  let logarithm = n * Math.log1p(-p)
  let sum = 0
  for (let k = 0; k <= n; k++) {
    sum += Math.exp(logarithm)
    cdf[k] = Math.min(1, sum)
    logarithm += Math.log((n - k) / (k + 1)) + odds
  }
  return cdf
}
