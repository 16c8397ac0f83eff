import { deviceFigures } from '../estimate/deviceFigures.ts'
import type { Warning } from '../estimate/estimate.ts'
import { intervalOfDifference } from '../quantity/intervalOfDifference.ts'
import type { Rebased } from './betterKnown.ts'
import type { DeviceContrasts } from './deviceContrasts.ts'
import { ipmvpOption } from './ipmvpOption.ts'
import type { DevicePair } from './matchDevices.ts'
import { partsOf } from './partsOf.ts'
import { savingOf, type SavingRules } from './savingOf.ts'
import type { Change, DeviceAtVisit, DeviceVerification } from './verification.ts'

/** A device at both visits, and everything that its figures are worked out from. */
export interface Matched {
  readonly pair: DevicePair
  readonly contrasts: DeviceContrasts
  readonly changes: readonly Change[]
  readonly rebased: readonly Rebased[]
}

/** What one device saved, and what of it is different. */
export function verifyDevice(
  { pair, contrasts, changes, rebased }: Matched,
  rules: SavingRules,
  weeksPerYear: number,
): DeviceVerification {
  const { coverage } = rules
  const { device, category } = (pair.after ?? pair.before)!
  const [before, after] = [
    atVisit(pair, 'before', coverage, weeksPerYear),
    atVisit(pair, 'after', coverage, weeksPerYear),
  ]
  const power = intervalOfDifference(contrasts.power, coverage)
  return {
    id: pair.id,
    label: device.label ?? null,
    category: category.code,
    categoryName: category.name,
    status: statusOf(pair, changes),
    changes,
    before: before?.shown ?? null,
    after: after?.shown ?? null,
    saving: savingOf([contrasts], rules, () => power),
    parts: before && after ? partsOf([contrasts], coverage) : null,
    ipmvp: ipmvpOption(pair),
    warnings: withoutRepeats([
      ...(rebased.length > 0 ? [NOT_A_SAVING] : []),
      ...(before?.warnings ?? []),
      ...(after?.warnings ?? []),
    ]),
  }
}

const NOT_A_SAVING: Warning = {
  code: 'not-a-saving',
  message:
    'One visit knew the power better than the other, by a reading, a label or the year of manufacture, and that figure stands for both: what it moves is better knowledge, no saving, and is in betterKnown. Where the device was replaced in between, give the new one an id of its own.',
}

const withoutRepeats = (warnings: readonly Warning[]): readonly Warning[] => [
  ...new Map(warnings.map((warning) => [warning.message, warning])).values(),
]

function statusOf({ before, after }: DevicePair, changes: readonly Change[]): DeviceVerification['status'] {
  if (!after) return 'removed'
  if (!before) return 'added'
  return changes.length > 0 ? 'changed' : 'unchanged'
}

/** As an estimate of the visit gives it. */
function atVisit(pair: DevicePair, visit: 'before' | 'after', coverage: number, weeksPerYear: number) {
  const resolved = pair[visit]
  if (!resolved) return null
  const { quantity } = resolved
  const terms = pair.modes.flatMap((mode) => mode[visit]?.terms ?? [])
  const { confidence, powerW, energyKwhPerYear, warnings } = deviceFigures(
    terms,
    quantity,
    coverage,
    weeksPerYear,
  )
  const shown: DeviceAtVisit = { quantity, confidence, powerW, energyKwhPerYear }
  return { shown, warnings }
}
