import type { Fault } from '../fault.ts'
import type { Category, CategoryMode } from './category.ts'
import { checkAliases } from './checkAliases.ts'
import { checkDraw } from './checkDraw.ts'
import { checkDrawYears } from './checkDrawYears.ts'
import { orderFaults } from './orderFaults.ts'

/** Hours in a week. The slack lets sums of fractions such as 3 x 56.0000000001 pass. */
const HOURS_PER_WEEK = 168
const SLACK = 1e-9

/**
 * Rules between the fields of a category that has the right shape (schemas/category.ts): figures in order, one
 * entry for each mode, no more hours than a week has, years of manufacture without overlap or hole, provenance
 * complete, aliases distinct. Every fault at once.
 * @param base JSON Pointer of the category in the document that the pointers shall speak of
 */
export function checkCategory(category: Category, base = ''): Fault[] {
  const { low, typical, high } = category.powerFactor
  const modes = `${base}/modes`
  return [
    ...checkAliases(category, `${base}/aliases`),
    ...orderFaults(['low', low], ['typical', typical], ['high', high], `${base}/powerFactor`),
    ...hoursFaults(category.modes, modes),
    ...repeatedModeFaults(category.modes, modes),
    ...category.modes.flatMap(({ draws }, index) => drawsFaults(draws, `${modes}/${index}/draws`)),
  ]
}

function hoursFaults(modes: readonly CategoryMode[], base: string): Fault[] {
  const sum = modes.reduce((hours, { defaultHoursPerWeek }) => hours + defaultHoursPerWeek, 0)
  if (sum <= HOURS_PER_WEEK + SLACK) return []
  const message = `The hours of all modes add up to ${sum} h a week, but a week has ${HOURS_PER_WEEK} h.`
  return [{ pointer: base, code: 'too-many-hours', message }]
}

function repeatedModeFaults(modes: readonly CategoryMode[], base: string): Fault[] {
  return modes.flatMap(({ mode }, index) => {
    if (modes.findIndex((other) => other.mode === mode) === index) return []
    const message = `The mode "${mode}" is listed more than once; put all its draws into one entry.`
    return [{ pointer: `${base}/${index}/mode`, code: 'mode-repeated', message }]
  })
}

function drawsFaults(draws: CategoryMode['draws'], base: string): Fault[] {
  return [
    ...draws.flatMap((draw, index) => checkDraw(draw, `${base}/${index}`)),
    ...checkDrawYears(draws, base),
  ]
}
