import { type Contrast, contrastMean, meanOfTerms } from './contrast.ts'
import { SignedSum } from './signedSum.ts'
import { type SharedFactor, type Term, termMean } from './term.ts'

/** Each takes a lattice of its own. What is left out is of second order in a stratum's width; more would not show. */
const STRATA = 4

/**
 * A difference as signed sums that stand for it in equal parts, with what is shared taken apart:
 *
 * - A shared factor V, the supply's voltage, that stands in one part alone is a factor of that part. Else it is cut into
 *   strata as in conditionedSums.ts: V A + B ~ v_i A + B + r_i E[A].
 * - A meter's gain g in several readings is one quantity, g E[L], with L the signed sum of what the meter read. What is
 *   left out, g (L - E[L]), is of second order: with readings that are known to 10 %, it widens an interval by less than
 *   var(g)/2 of its width, which is 0.02 % for a gain of 3 % and 0.2 % for one of 10 %. Where nothing but readings and
 *   constants is in L, it is exact.
 */
export function signedSums(contrasts: readonly Contrast[]): SignedSum[] {
  const parts = contrasts.map(hoisted)
  const shared = repeatedFactor(parts)
  if (!shared) return [withoutShared(parts)]
  const { key, distribution } = shared
  const mean = parts.reduce((sum, part) => sum + (holds(part, key) ? contrastMean(only(part, key)) : 0), 0)
  return Array.from({ length: STRATA }, (_, i) => {
    const [from, to] = [distribution.quantile(i / STRATA), distribution.quantile((i + 1) / STRATA)]
    const sum = withoutShared(parts.map((part) => fixed(part, key, (from + to) / 2)))
    sum.addSymmetric((Math.abs(mean) * (to - from)) / 2)
    return sum
  })
}

/** A shared factor that all terms of a part have stands before the part. */
function hoisted({ common, terms }: Contrast): Contrast {
  const shared = terms[0]?.shared
  if (!shared || common.shared || !terms.every((term) => term.shared?.key === shared.key))
    return { common, terms }
  return { common: { ...common, shared }, terms: terms.map((term) => ({ ...term, shared: undefined })) }
}

const termsOf = ({ common, terms }: Contrast): readonly Term[] => [common, ...terms]
const holds = (part: Contrast, key: string) => termsOf(part).some(({ shared }) => shared?.key === key)

function repeatedFactor(parts: readonly Contrast[]): SharedFactor | null {
  const seen = new Set<string>()
  for (const { shared } of parts.flatMap(termsOf)) {
    if (shared && seen.has(shared.key)) return shared
    if (shared) seen.add(shared.key)
  }
  return null
}

/** What of a part the shared factor multiplies, without the factor. */
function only({ common, terms }: Contrast, key: string): Contrast {
  if (common.shared?.key === key) return fixed({ common, terms }, key, 1)
  return fixed({ common, terms: terms.filter(({ shared }) => shared?.key === key) }, key, 1)
}

function fixed({ common, terms }: Contrast, key: string, value: number): Contrast {
  const fix = (term: Term): Term =>
    term.shared?.key === key ? { ...term, coefficient: term.coefficient * value, shared: undefined } : term
  return { common: fix(common), terms: terms.map(fix) }
}

function withoutShared(parts: readonly Contrast[]): SignedSum {
  const repeated = repeatedMeters(parts)
  const sum = new SignedSum()
  for (const part of parts) sum.addContrast(part, (meter) => meter !== null && repeated.has(meter))
  for (const [meter, gain] of repeated)
    sum.addSymmetric(Math.abs(parts.reduce((all, part) => all + readBy(part, meter), 0)) * gain)
  return sum
}

/** Meters that stand in several terms, with their gain. */
function repeatedMeters(parts: readonly Contrast[]): Map<string, number> {
  const seen = new Set<string>()
  const repeated = new Map<string, number>()
  for (const { metered } of parts.flatMap(termsOf)) {
    if (!metered?.meter || metered.gain === 0) continue
    if (seen.has(metered.meter)) repeated.set(metered.meter, metered.gain)
    seen.add(metered.meter)
  }
  return repeated
}

/** Mean of what a meter read in a part, with the value that it showed in place of the reading. */
function readBy({ common, terms }: Contrast, meter: string): number {
  const shown = (term: Term): Term => ({
    ...term,
    coefficient: term.coefficient * term.metered!.value,
    metered: undefined,
  })
  if (common.metered?.meter === meter) return termMean(shown(common)) * meanOfTerms(terms)
  const read = terms.filter(({ metered }) => metered?.meter === meter).map(shown)
  return termMean(common) * meanOfTerms(read)
}
