import { intervalOfSum, scaleInterval, type Interval } from '../quantity/intervalOfSum.ts'
import { significantInterval } from '../quantity/significant.ts'
import type { DevicePair } from './matchDevices.ts'
import { partsOf } from './partsOf.ts'
import { savingOf, type SavingRules } from './savingOf.ts'
import type { TotalVerification } from './verification.ts'
import type { Matched } from './verifyDevice.ts'

const HOURS_PER_WEEK = 168

/** What all devices saved, and those that are in both visits, in the first and in the second alone. */
export function verifyTotal(
  devices: readonly Matched[],
  rules: SavingRules,
  weeksPerYear: number,
): TotalVerification {
  const overYear = (energy: Interval) => scaleInterval(energy, 1000 / (weeksPerYear * HOURS_PER_WEEK))
  const some = (fits: (pair: DevicePair) => boolean) =>
    devices.filter(({ pair }) => fits(pair)).map(({ contrasts }) => contrasts)
  const atVisit = (visit: 'before' | 'after') =>
    significantInterval(
      intervalOfSum(
        devices.flatMap(({ pair }) => pair.modes.flatMap((mode) => mode[visit]?.terms.energy ?? [])),
        rules.coverage,
      ),
    )
  const kept = some(({ before, after }) => before !== null && after !== null)
  const all = savingOf(
    some(() => true),
    rules,
    overYear,
    true,
  )
  return {
    beforeKwhPerYear: atVisit('before'),
    afterKwhPerYear: atVisit('after'),
    all,
    // Most visits find the same devices.
    kept: kept.length === devices.length ? all : savingOf(kept, rules, overYear),
    keptParts: partsOf(kept, rules.coverage),
    removed: savingOf(
      some(({ after }) => after === null),
      rules,
      overYear,
    ),
    added: savingOf(
      some(({ before }) => before === null),
      rules,
      overYear,
    ),
  }
}
