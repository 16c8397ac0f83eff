import type { Lattice } from './lattice.ts'

type LatticeMasses = Pick<Lattice, 'masses' | 'start' | 'length' | 'smear'>

/**
 * The p-quantile of a lattice distribution, in steps, or null where the lattice was cut off below it.
 *
 * Half-way between two points the distribution function is the sum F of the masses up to there, less what the smear
 * added. With a = smear - 1/12 (the midpoint rule's part taken off), in steps, and derivatives from the masses'
 * differences (a convolution with a narrow density expanded, and inverted):
 *
 *   F - a/2 F'' + a^2/8 F''''
 *
 * Between half-way points the density is taken as straight.
 */
export function latticeQuantile(lattice: LatticeMasses, p: number): number | null {
  const { masses, start, length, smear } = lattice
  const a = smear - 1 / 12
  let [sum, before] = [0, 0]
  for (let i = 0; i < length; i++) {
    sum += masses[i]!
    const [earlier, here, next, later] = [
      mass(lattice, i - 1),
      masses[i]!,
      mass(lattice, i + 1),
      mass(lattice, i + 2),
    ]
    const bend = later - 3 * next + 3 * here - earlier
    const at = Math.max(before, sum - (a / 2) * (next - here) + ((a * a) / 8) * bend)
    if (at >= p) return start + i - 0.5 + within(p - before, at - before, (earlier - next) / 4)
    before = at
  }
  return null
}

const mass = ({ masses, length }: LatticeMasses, i: number): number => (i >= 0 && i < length ? masses[i]! : 0)

/**
 * How far into a step of some rise a probability is reached: t of rise t + bulge t (1 - t) = part, where the density falls by twice
 * the bulge over the step.
 */
function within(part: number, rise: number, bulge: number): number {
  const c = Math.max(-rise, Math.min(rise, bulge))
  return (2 * part) / (rise + c + Math.sqrt(Math.max(0, (rise + c) ** 2 - 4 * c * part)))
}
