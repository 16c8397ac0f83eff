import type { Distribution } from './distribution.ts'
import type { Lattice } from './lattice.ts'

/**
 * A lattice as a distribution of stated mean and second moment. What was cut off stands as one far value that keeps
 * the mean; where nothing was, the points are moved so that the mean is exact. The points are pulled together about
 * the mean by what the lattice added to the spread.
 */
export function latticeDistribution(
  lattice: Lattice,
  step: number,
  mean: number,
  meanSquare: number,
): Distribution {
  const { first, width, kept, keptMean } = drawnTogether(lattice, step, mean)
  const { length } = lattice
  const far = kept < 1 - 1e-9 ? Math.max((mean - keptMean) / (1 - kept), first + length * width) : null
  const below = new Float64Array(length + 1)
  const moments = new Float64Array(length + 1)
  for (let i = 0; i < length; i++) {
    const mass = lattice.masses[i]!
    below[i + 1] = below[i]! + mass
    moments[i + 1] = moments[i]! + mass * (first + i * width)
  }
  const count = (x: number) => Math.max(0, Math.min(length, Math.floor((x - first) / width) + 1))
  const beyond = (x: number) => (far !== null && x > far ? (1 - kept) * (x - far) : 0)
  const quantile = (p: number) => {
    let [i, last] = [1, length]
    while (i < last) {
      const middle = (i + last) >> 1
      if (below[middle]! < p) i = middle + 1
      else last = middle
    }
    if (below[i]! < p) return far ?? first + (length - 0.5) * width
    return Math.max(0, first + (i - 1.5 + (p - below[i - 1]!) / (below[i]! - below[i - 1]!)) * width)
  }
  return {
    mean,
    meanSquare,
    min: Math.max(0, first),
    max: far ?? first + (length - 1) * width,
    cdf: (x) => (far !== null && x >= far ? 1 : below[count(x)]!),
    cdfIntegral: (x) => Math.max(0, x * below[count(x)]! - moments[count(x)]!) + beyond(x),
    quantile,
  }
}

function drawnTogether({ start, length, masses, smear }: Lattice, step: number, mean: number) {
  let [kept, sum, square] = [0, 0, 0]
  for (let i = 0; i < length; i++) {
    kept += masses[i]!
    sum += masses[i]! * (start + i) * step
    square += masses[i]! * ((start + i) * step) ** 2
  }
  const center = sum / kept
  const spreadSquare = square / kept - center * center
  const pull = Math.sqrt(Math.max(0, 1 - (smear * step * step) / spreadSquare))
  const middle = kept > 1 - 1e-6 ? mean : center
  return {
    first: middle + (start * step - center) * pull,
    width: step * pull,
    kept,
    keptMean: kept * middle,
  }
}
