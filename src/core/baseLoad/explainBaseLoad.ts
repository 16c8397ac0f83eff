import type { Catalogue } from '../catalogue/catalogue.ts'
import type { EstimateSettings } from '../estimate/settings.ts'
import { significantInterval } from '../quantity/significant.ts'
import type { BaseLoadOptions, Explained } from './baseLoadEvaluation.ts'
import { compareWithInventory } from './compareWithInventory.ts'
import type { DayFigure } from './dayFigure.ts'
import { type InventoryPower, powerOfInterval, powerOfInventory } from './inventoryPower.ts'
import { restCandidates } from './restCandidates.ts'

const CORRELATION =
  'Base load and inventory are taken as independent: one comes from the home’s meter, the other from its devices. Within the inventory, readings with one meter share its gain, and current readings share the voltage.'

/** How much of a base load the inventory explains; null where none was given. */
export function explainBaseLoad(
  base: DayFigure,
  options: BaseLoadOptions,
  coverage: number,
  catalogue: Catalogue,
  settings: EstimateSettings,
): { readonly explained: Explained; readonly inventoryIsMore: number } | null {
  const inventory = inventoryOf(options, coverage, catalogue, settings)
  if (!inventory) return null
  const { explainedShare, restW, inventoryIsMore } = compareWithInventory(base, inventory, coverage)
  const explained = {
    from: options.inventory ? ('inventory' as const) : ('request' as const),
    devices: inventory.devices,
    sampleData: inventory.sampleData,
    powerW: significantInterval(inventory.powerW),
    explainedShare: significantInterval(explainedShare),
    restW: significantInterval(restW),
    correlation: CORRELATION,
    couldBe: restCandidates(inventory.hasRefrigeration),
  }
  return { explained, inventoryIsMore }
}

function inventoryOf(
  { inventory, inventoryPowerW }: BaseLoadOptions,
  coverage: number,
  catalogue: Catalogue,
  settings: EstimateSettings,
): InventoryPower | null {
  if (inventory) return powerOfInventory(inventory, catalogue, settings, coverage)
  return inventoryPowerW ? powerOfInterval(inventoryPowerW, coverage) : null
}
