import type { Range } from '../catalogue/category.ts'
import type { Measure } from './measure.ts'
import type { MeasureChoice, PlanOptions } from './savingsRequest.ts'

/** A measure as it is available in one household. */
export interface AvailableMeasure extends Measure {
  /** Ids of the devices that it is for; null where it is for all that it suits. */
  readonly devices: readonly string[] | null
  /** Its place among those that are available: part of its name, and of the order in which equals are chosen. */
  readonly place: number
}

/**
 * The measures of a plan: those that the household names, with its own figures, or all that the service has.
 * @param choices checked by checkPlanOptions
 */
export function availableMeasures(
  { measures: choices }: PlanOptions,
  known: ReadonlyMap<string, Measure>,
): AvailableMeasure[] {
  if (!choices) return [...known.values()].map((measure, place) => ({ ...measure, devices: null, place }))
  return choices.map((choice, place) => ({
    ...withFigures(known.get(choice.code)!, choice),
    devices: choice.devices ?? null,
    place,
  }))
}

/** Figures that make a measure's saving or its payback; where the household gives them all, nothing invented is left. */
const FIGURES = [
  'lifeYears',
  'persistence',
  'ownDrawW',
  'hoursOffPerWeek',
  'fromMode',
  'toMode',
  'newDrawW',
] as const

function withFigures(measure: Measure, choice: MeasureChoice): Measure {
  const { persistence, ownDrawW, newDrawW, ...figures } = choice
  const given = (field: (typeof FIGURES)[number]) => choice[field] !== undefined || isEmpty(measure[field])
  return {
    ...measure,
    ...figures,
    ...(figures.price !== undefined && { currency: null }),
    ...(persistence !== undefined && { persistence: rangeOf(persistence) }),
    ...(ownDrawW !== undefined && { ownDrawW: rangeOf(ownDrawW) }),
    ...(newDrawW !== undefined && { newDrawW: rangeOf(newDrawW) }),
    sampleData: measure.sampleData && !(figures.price !== undefined && FIGURES.every(given)),
  }
}

const isEmpty = (value: Measure[(typeof FIGURES)[number]]) =>
  value === null || (typeof value === 'object' && value.high === 0)

const rangeOf = (value: number | Range): Range =>
  typeof value === 'number' ? { low: value, typical: value, high: value } : value
