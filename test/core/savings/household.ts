import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import type { Device, DeviceMode } from '../../../src/core/inventory/household.ts'
import { planSavings } from '../../../src/core/savings/planSavings.ts'
import type { SavingsPlan } from '../../../src/core/savings/savingsPlan.ts'
import type { SavingsRequest } from '../../../src/core/savings/savingsRequest.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'

export const catalogue = catalogueOf(1, testCategories)

/** A grid of which nothing else is known. */
export const emissionFactor = { kgCo2ePerKwh: 0.5 }

export const planFor = (request: SavingsRequest): SavingsPlan =>
  planSavings({ emissionFactor, ...request }, catalogue, testSettings)

/** A mode that was read without error. */
export const read = (mode: DeviceMode['mode'], watts: number, hoursPerWeek: number): DeviceMode => ({
  mode,
  hoursPerWeek,
  reading: { kind: 'power', watts },
})

/** A television of 5 W for 100 h a week: 26 kWh a year of 52 weeks, 7.80 EUR. */
export const television: Device = { id: 'tv', category: 'television', modes: [read('standby', 5, 100)] }

/** The figures of a measure at one place. */
export function figuresOf(plan: SavingsPlan, id: string) {
  const found = plan.measures.find((measure) => measure.id === id)
  if (!found) throw new Error(`${id} is not offered, only ${plan.measures.map((one) => one.id).join(', ')}`)
  return found.figures
}
