import type { Category, Range } from '../catalogue/category.ts'
import type { DeviceMode } from '../inventory/household.ts'
import { askedModes } from './askedModes.ts'
import { HOURS_OF_CHOICE, type HoursChoice, USUAL } from './hoursChoice.ts'

/**
 * The modes of a device, as an estimate takes them, where somebody chose how long it is plugged in: the choice's hours
 * divide into modes as the catalogue's own do. `usual` leaves the hours to the catalogue.
 */
export function modesOfChoice(category: Category, choice: HoursChoice): readonly DeviceMode[] {
  const modes = askedModes(category)
  if (choice === USUAL) return modes.map(({ mode }) => ({ mode }))
  const total = modes.reduce((sum, { defaultHoursPerWeek }) => sum + defaultHoursPerWeek, 0)
  return modes.map(({ mode, defaultHoursPerWeek }) => ({
    mode,
    hoursPerWeek: times(HOURS_OF_CHOICE[choice], total > 0 ? defaultHoursPerWeek / total : 1 / modes.length),
  }))
}

const times = ({ low, typical, high }: Range, share: number): Range => ({
  low: rounded(low * share),
  typical: rounded(typical * share),
  high: rounded(high * share),
})

/** To a hundredth of an hour, which nobody's plain answer reaches. */
const rounded = (hours: number) => Math.round(hours * 100) / 100
