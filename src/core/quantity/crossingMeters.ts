import { grouped } from './sumNode.ts'
import type { Term } from './term.ts'

/** Meters whose readings stand both inside and outside a shared factor, so that no tree can hold them. */
export function crossingMeters(terms: readonly Term[]): string[] {
  const shares = grouped(terms, (term) => term.shared?.key ?? null)[1].flat()
  const inside = new Set(shares.map((term) => term.metered?.meter))
  const outside = terms.filter((term) => !shares.includes(term)).map((term) => term.metered)
  const meters = outside.filter((reading) => reading?.meter && reading.gain > 0 && inside.has(reading.meter))
  return [...new Set(meters.map((reading) => reading!.meter!))]
}

const CONDITIONS = 64
const GOLDEN = (Math.sqrt(5) - 1) / 2

/**
 * The terms once for each of 64 sets of gains of the given meters, all equally probable, from a Kronecker sequence:
 * for the rare meter that read both current at the supply's assumed voltage and power.
 */
export function onEachGain(meters: readonly string[], terms: readonly Term[]): Term[][] {
  return Array.from({ length: CONDITIONS }, (_, i) =>
    terms.map((term) => {
      const { metered } = term
      const which = metered?.meter ? meters.indexOf(metered.meter) : -1
      if (!metered || which < 0) return term
      const place = which === 0 ? (i + 0.5) / CONDITIONS : ((i + 0.5) * (GOLDEN + which * Math.SQRT2)) % 1
      const value = metered.value * (1 + metered.gain * (2 * place - 1))
      return { ...term, metered: { value, gain: 0, counts: metered.counts, meter: null } }
    }),
  )
}
