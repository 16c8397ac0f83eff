import { Lattice } from './lattice.ts'
import { spreadOfSum } from './spreadOfSum.ts'
import type { Sum } from './sumNode.ts'

/** What splitting a constant between two points adds to the variance, in steps squared, on average. */
const SPLIT_SMEAR = 1 / 6

/** Equal parts of sums on one lattice, each with its constant, which is split between two points like any probability. */
export function mixture(sums: readonly Sum[], step: number, highest: number): Lattice {
  const parts = sums.map((sum) => {
    const offset = sum.constant / step
    const { start, length, masses, smear } = spreadOfSum(sum, step, Math.ceil(highest / step - offset))
    return { first: start + offset, masses: masses.slice(0, length), smear }
  })
  const start = Math.floor(Math.min(...parts.map(({ first }) => first)))
  const end = Math.max(...parts.map(({ first, masses }) => Math.ceil(first) + masses.length))
  const all = new Lattice()
  all.clear(start, end - start + 1)
  for (const { first, masses, smear } of parts) {
    const place = Math.floor(first) - start
    const beyond = first - Math.floor(first)
    masses.forEach((mass, i) => {
      all.masses[place + i]! += (mass * (1 - beyond)) / parts.length
      all.masses[place + i + 1]! += (mass * beyond) / parts.length
    })
    all.smear += (smear + SPLIT_SMEAR) / parts.length
  }
  return all
}
