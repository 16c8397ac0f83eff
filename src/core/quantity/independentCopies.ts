import { type Distribution, isExact } from './distribution.ts'
import { exact } from './exact.ts'
import { convolve, type Lattice, latticeQuantile, spread } from './lattice.ts'

/**
 * The sum of `count` independent draws of one quantity, such as eight lamps of a kind.
 *
 * On a lattice, by repeated squaring; the mean is exact, and so is the second moment. Values beyond 1.5 times the
 * reach of the 99.9th percentile are cut off, and the shape is pulled together about its mean by what the lattice
 * added to the spread.
 */
export function independentCopies(x: Distribution, count: number): Distribution {
  if (count === 1) return x
  if (isExact(x)) return exact(x.mean * count)
  const lattice = repeated(x, count)
  return onLattice(lattice, count * x.mean, count * (x.meanSquare - x.mean ** 2) + (count * x.mean) ** 2)
}

const STEPS_ACROSS = 64

function repeated(x: Distribution, count: number): Lattice {
  const median = x.quantile(0.5)
  const root = Math.sqrt(count)
  const above = (x.quantile(0.995) - median) * root
  const below = (median - x.quantile(0.005)) * root
  const across = above + below
  const step =
    Math.min(across / STEPS_ACROSS, Math.max(below / 8, across / 400)) / Math.sqrt(Math.max(1, count / 40))
  for (let reach = 1.5; ; reach *= 2) {
    const limit = Math.ceil((count * Math.max(x.mean, median) + reach * above) / step)
    const sum = power(spread(x, { values: [1], weights: [1] }, step, limit), count, limit)
    if (latticeQuantile(sum, 0.999) !== null) return sum
  }
}

function power(one: Lattice, count: number, limit: number): Lattice {
  if (count === 1) return one
  const half = power(one, Math.floor(count / 2), limit)
  const whole = convolve(half, half, limit)
  return count % 2 === 0 ? whole : convolve(whole, one, limit)
}

/**
 * A lattice as a distribution of stated mean and second moment. What was cut off stands as one far value that keeps
 * the mean; where nothing was, the points are moved so that the mean is exact.
 */
function onLattice(lattice: Lattice, mean: number, meanSquare: number): Distribution {
  const { masses } = lattice
  const { first, width, kept, keptMean } = drawnTogether(lattice, mean)
  const far = kept < 1 - 1e-9 ? Math.max((mean - keptMean) / (1 - kept), first + masses.length * width) : null
  const below = new Float64Array(masses.length + 1)
  const moments = new Float64Array(masses.length + 1)
  masses.forEach((mass, i) => {
    below[i + 1] = below[i]! + mass
    moments[i + 1] = moments[i]! + mass * (first + i * width)
  })
  const count = (x: number) => Math.max(0, Math.min(masses.length, Math.floor((x - first) / width) + 1))
  const beyond = (x: number) => (far !== null && x > far ? (1 - kept) * (x - far) : 0)
  const quantile = (p: number) => {
    let i = 1
    while (i < masses.length && below[i]! < p) i++
    if (below[i]! < p) return far ?? first + masses.length * width
    return Math.max(0, first + (i - 1.5 + (p - below[i - 1]!) / (below[i]! - below[i - 1]!)) * width)
  }
  return {
    mean,
    meanSquare,
    min: Math.max(0, first),
    max: far ?? first + (masses.length - 1) * width,
    cdf: (x) => (far !== null && x >= far ? 1 : below[count(x)]!),
    cdfIntegral: (x) => Math.max(0, x * below[count(x)]! - moments[count(x)]!) + beyond(x),
    quantile,
  }
}

function drawnTogether({ step, start, masses, smear }: Lattice, mean: number) {
  let [kept, sum, square] = [0, 0, 0]
  masses.forEach((mass, i) => {
    kept += mass
    sum += mass * (start + i) * step
    square += mass * ((start + i) * step) ** 2
  })
  const center = sum / kept
  const spreadSquare = square / kept - center * center
  const pull = Math.sqrt(Math.max(0, 1 - (smear * step * step) / spreadSquare))
  const middle = kept > 1 - 1e-6 ? mean : center
  return { first: middle + (start * step - center) * pull, width: step * pull, kept, keptMean: kept * middle }
}
