import type { Contrast } from '../quantity/contrast.ts'
import { exact } from '../quantity/exact.ts'
import type { ModeTerms } from '../estimate/estimateMode.ts'
import { contrastsOf, type Weights } from './contrastsOf.ts'
import type { DevicePair, ModePair } from './matchDevices.ts'
import { pairPowers, type PowerPart } from './pairPowers.ts'

/** The differences between two visits of one device, each as parts that can be summed with those of others. */
export interface DeviceContrasts {
  /** kWh/yr */
  readonly energy: readonly Contrast[]
  /** W, averaged over the hours counted at each visit. */
  readonly power: readonly Contrast[]
  /** kWh/yr: powers differ, at the hours before. */
  readonly powerEffect: readonly Contrast[]
  /** kWh/yr: hours differ, at the power after. */
  readonly hoursEffect: readonly Contrast[]
  /** Energies weighed by what a kWh costs in a mode at a visit. */
  priced(priceOf: (terms: ModeTerms) => number): Contrast[]
}

const NEVER = exact(0)

/**
 * Energy saved = P1 h1 - P2 h2 = (P1 - P2) h1 + P2 (h1 - h2): what a change of power saved at the hours before, and what
 * a change of hours saved at the power after. A device that was replaced has other modes for that reason, and their hours
 * belong to the change of power.
 * Source: retrofit isolation, IPMVP Core Concepts (EVO 10000-1:2016), options A and B, from memory.
 */
export function deviceContrasts(pair: DevicePair, weeksPerYear: number): DeviceContrasts {
  const isReplaced = pair.before !== null && pair.after !== null && !pair.isSame
  const modes = pair.modes.map((mode) => ({ mode, parts: pairPowers(mode, pair.isSame, isReplaced) }))
  const perHour = weeksPerYear / 1000
  const all = (contrasts: (parts: PowerPart, weights: Weights, mode: ModePair) => Contrast[]) =>
    modes.flatMap(({ mode, parts }) =>
      parts.flatMap((part) => contrasts(part, weightsOf(mode, perHour), mode)),
    )
  return {
    energy: all(contrastsOf),
    power: all((part, _, mode) => contrastsOf(part, averaging(mode, pair))),
    powerEffect: all(ofPower),
    hoursEffect: all(ofHours),
    priced: (priceOf) =>
      all((part, { before, after }, mode) =>
        contrastsOf(part, {
          before: { ...before, scale: perHour * (mode.before ? priceOf(mode.before.terms) : 0) },
          after: { ...after, scale: perHour * (mode.after ? priceOf(mode.after.terms) : 0) },
        }),
      ),
  }
}

/** A mode that a visit does not have counts no hours there. */
function weightsOf({ before, after }: ModePair, scale: number): Weights {
  return {
    before: { hours: before?.terms.hoursPerWeek ?? NEVER, scale },
    after: { hours: after?.terms.hoursPerWeek ?? NEVER, scale },
  }
}

function averaging({ mode }: ModePair, { modes }: DevicePair): Weights {
  const share = (visit: 'before' | 'after') => {
    const hours = modes.map((one) => one[visit]?.terms.hoursPerWeek.mean ?? 0)
    const sum = hours.reduce((all, some) => all + some, 0)
    const own = hours[modes.findIndex((one) => one.mode === mode)]!
    return { hours: exact(1), scale: sum === 0 ? 0 : own / sum }
  }
  return { before: share('before'), after: share('after') }
}

function ofPower(part: PowerPart, { before, after }: Weights): Contrast[] {
  if (part.kind === 'one' && part.effect === 'hours') return []
  const hours = before.hours === NEVER ? after : before
  return contrastsOf(part, { before: hours, after: hours })
}

function ofHours(part: PowerPart, weights: Weights): Contrast[] {
  if (part.kind === 'one' && part.effect === 'hours') return contrastsOf(part, weights)
  if (part.kind === 'one' && (part.visit === 'before' || weights.before.hours === NEVER)) return []
  const power = powerAfter(part)
  const times = part.kind === 'shared' ? part.after : 1
  return contrastsOf({ kind: 'shared', power, before: times, after: times }, weights)
}

function powerAfter(part: PowerPart) {
  if (part.kind !== 'both') return part.power
  return { ...part.after, factors: [...part.after.factors, ...part.common] }
}
