import { Lattice } from './lattice.ts'
import { spreadOfSum } from './spreadOfSum.ts'
import type { Sum } from './sumNode.ts'

/** What splitting a constant between two points adds to the variance, in steps squared, on average. */
const SPLIT_SMEAR = 1 / 6

/** Equal parts of sums on one lattice, each with its constant, which is split between two points like any probability. */
export function mixture(sums: readonly Sum[], step: number, highest: number): Lattice {
  return mixed(
    sums.map((sum) => {
      const offset = sum.constant / step
      const { start, length, masses, smear } = spreadOfSum(sum, step, Math.ceil(highest / step - offset))
      return { offset, lattice: { start, length, masses: masses.slice(0, length), smear } }
    }),
  )
}

interface Part {
  /** Constant that is added, in steps. */
  readonly offset: number
  readonly lattice: Pick<Lattice, 'start' | 'length' | 'masses' | 'smear'>
}

/** Equal parts of lattices of one step. */
export function mixed(parts: readonly Part[]): Lattice {
  const firsts = parts.map(({ offset, lattice }) => lattice.start + offset)
  const start = Math.floor(Math.min(...firsts))
  const end = Math.max(...parts.map(({ lattice }, k) => Math.ceil(firsts[k]!) + lattice.length))
  const all = new Lattice()
  all.clear(start, end - start + 1)
  parts.forEach(({ lattice: { length, masses, smear } }, k) => {
    const place = Math.floor(firsts[k]!) - start
    const beyond = firsts[k]! - Math.floor(firsts[k]!)
    for (let i = 0; i < length; i++) {
      all.masses[place + i]! += (masses[i]! * (1 - beyond)) / parts.length
      all.masses[place + i + 1]! += (masses[i]! * beyond) / parts.length
    }
    all.smear += (smear + SPLIT_SMEAR) / parts.length
  })
  return all
}
