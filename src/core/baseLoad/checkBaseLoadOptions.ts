import type { Catalogue } from '../catalogue/catalogue.ts'
import type { EstimateSettings } from '../estimate/settings.ts'
import type { Fault, Submitted } from '../fault.ts'
import { checkHousehold } from '../inventory/checkHousehold.ts'
import type { BaseLoadOptions } from './baseLoadEvaluation.ts'
import { NIGHT } from './evaluateBaseLoad.ts'

/**
 * What is wrong with what a caller says beside the data, beyond its shape. Where the shape does not hold, the inventory
 * is checked as far as it can be read.
 */
export function checkBaseLoadOptions(
  { value, raw }: Submitted<BaseLoadOptions>,
  catalogue: Catalogue,
  settings: EstimateSettings,
): Fault[] {
  const inventory = inventoryOf(raw)
  const household = inventory === undefined ? [] : checkHousehold(inventory, catalogue, settings)
  return [
    ...(value ? [...nightFaults(value), ...awayFaults(value), ...inventoryFaults(value)] : []),
    ...household.map((fault) => ({ ...fault, pointer: `/inventory${fault.pointer}` })),
  ]
}

const inventoryOf = (raw: unknown): unknown =>
  typeof raw === 'object' && raw !== null && 'inventory' in raw ? raw.inventory : undefined

function nightFaults({
  nightFromHour = NIGHT.fromHour,
  nightToHour = NIGHT.toHour,
}: BaseLoadOptions): Fault[] {
  if (nightFromHour < nightToHour) return []
  return [
    {
      pointer: '/nightToHour',
      code: 'range-out-of-order',
      message: `The night window must end after it begins, within one day, but it is from ${nightFromHour} to ${nightToHour}.`,
    },
  ]
}

const awayFaults = ({ daysAway = [] }: BaseLoadOptions): Fault[] =>
  daysAway.flatMap(({ from, to }, index) =>
    from <= to
      ? []
      : [
          {
            pointer: `/daysAway/${index}/to`,
            code: 'range-out-of-order',
            message: `Days away must not end before they begin, but they are from ${from} to ${to}.`,
          },
        ],
  )

function inventoryFaults({ inventory, inventoryPowerW }: BaseLoadOptions): Fault[] {
  if (!inventoryPowerW) return []
  const { low, expected, high } = inventoryPowerW
  const faults: Fault[] = []
  if (inventory)
    faults.push({
      pointer: '/inventoryPowerW',
      code: 'either-or',
      message: 'Give the inventory or its power, not both.',
    })
  if (low > expected || expected > high)
    faults.push({
      pointer: '/inventoryPowerW',
      code: 'range-out-of-order',
      message: `low, expected and high must be in this order, but they are ${low} W, ${expected} W and ${high} W.`,
    })
  return faults
}
