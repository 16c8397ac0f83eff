import { type Distribution, isExact } from './distribution.ts'
import { grouped } from './grouped.ts'
import { rectangularSum } from './rectangularSum.ts'
import { GrowingSum } from './sumNode.ts'
import { type MeterReadingValue, readingDistribution, type Term } from './term.ts'

/** Puts terms into a tree. Terms that share a factor go under it; inside, those that share a meter go under its gain. */
export function treeOf(terms: readonly Term[]): GrowingSum {
  const sum = new GrowingSum()
  const { alone, groups } = grouped(terms, (term) => term.shared?.key)
  addByMeter(alone, ownFactors, sum)
  for (const group of groups) {
    const inner = new GrowingSum()
    addByMeter(group, (term) => term.factors, inner)
    sum.addScaled(group[0]!.shared!.distribution, inner)
  }
  return sum
}

/** What multiplies a term besides its reading; a shared factor that no other term has is one of them. */
type FactorsOf = (term: Term) => readonly Distribution[]
const ownFactors: FactorsOf = ({ factors, shared }) => (shared ? [...factors, shared.distribution] : factors)

function addByMeter(terms: readonly Term[], factorsOf: FactorsOf, sum: GrowingSum): void {
  const { alone, groups } = grouped(terms, ({ metered }) =>
    metered && metered.gain > 0 ? metered.meter : undefined,
  )
  for (const term of alone) {
    const factors = factorsOf(term)
    sum.addProduct(term.coefficient, term.metered ? [...factors, readingDistribution(term.metered)] : factors)
  }
  for (const group of groups) {
    if (group.every((term) => addsOnly(term, factorsOf))) addGain(group, factorsOf, sum)
    else scaleByGain(group, factorsOf, sum)
  }
}

const unclipped = (reading: MeterReadingValue) => reading.value * (1 - reading.gain) >= reading.counts
const addsOnly = (term: Term, factorsOf: FactorsOf) =>
  unclipped(term.metered!) && factorsOf(term).every(isExact)

/** Readings times constants: the gain's part of the sum is one rectangular quantity, added to each reading's counts part. */
function addGain(group: readonly Term[], factorsOf: FactorsOf, sum: GrowingSum): void {
  let total = 0
  for (const term of group) {
    const { value, counts } = term.metered!
    const scale = factorsOf(term).reduce((product, factor) => product * factor.mean, term.coefficient)
    sum.addProduct(scale, [rectangularSum(value, counts)])
    total += scale * value
  }
  sum.constant -= total
  sum.addProduct(1, [rectangularSum(total, total * group[0]!.metered!.gain)])
}

/**
 * Readings times uncertain factors: the gain multiplies the sum, (1 + g)(reading + c) in place of
 * reading (1 + g) + c. The difference g c is of second order; README.md of this folder states its size.
 */
function scaleByGain(group: readonly Term[], factorsOf: FactorsOf, sum: GrowingSum): void {
  const inner = new GrowingSum()
  for (const term of group) {
    const { value, counts } = term.metered!
    inner.addProduct(term.coefficient, [...factorsOf(term), rectangularSum(value, counts)])
  }
  sum.addScaled(rectangularSum(1, group[0]!.metered!.gain), inner)
}
