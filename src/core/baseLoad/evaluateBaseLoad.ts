import type { Catalogue } from '../catalogue/catalogue.ts'
import { revisionsUsed } from '../catalogue/revisionsUsed.ts'
import { cautionsFor } from '../cautions/cautions.ts'
import { METHOD_VERSION } from '../estimate/methodVersion.ts'
import type { EstimateSettings } from '../estimate/settings.ts'
import { FaultyInput } from '../fault.ts'
import { significant } from '../quantity/significant.ts'
import type { BaseLoadEvaluation, BaseLoadOptions } from './baseLoadEvaluation.ts'
import { baseLoadWarnings } from './baseLoadWarnings.ts'
import { chooseEstimate } from './chooseEstimate.ts'
import { isIn, suspectDaysAway } from './daysAway.ts'
import { estimatorsOf } from './estimators.ts'
import { explainBaseLoad } from './explainBaseLoad.ts'
import type { IntervalData } from './intervalData.ts'
import { instantText } from './localClock.ts'
import { isComplete, type LocalDay, localDays, type LocalDays, type NightWindow } from './localDays.ts'
import { only, type Readings } from './readings.ts'
import { onlyNights } from './onlyNights.ts'
import { summariseData } from './summariseData.ts'
import { placeWordOf, type UsableReadings, usableReadings } from './usableReadings.ts'

/** One to five at night: people sleep, and what switches by itself is on as it always is. Common practice, no source. */
export const NIGHT: NightWindow = { fromHour: 1, toHour: 5 }

/**
 * What a home draws when nobody is using anything, from its meter's intervals; and how much of that an inventory
 * explains.
 * @param options checked by checkBaseLoadOptions
 * @throws FaultyInput where the data can't tell a base load, with what to do about it
 */
export function evaluateBaseLoad(
  data: IntervalData,
  options: BaseLoadOptions,
  catalogue: Catalogue,
  settings: EstimateSettings,
): BaseLoadEvaluation {
  const night = {
    fromHour: options.nightFromHour ?? NIGHT.fromHour,
    toHour: options.nightToHour ?? NIGHT.toHour,
  }
  const coverage =
    options.coverageProbability ?? options.inventory?.coverageProbability ?? settings.coverageProbability
  const usable = usableReadings(data, options.generation ?? false)
  const all = localDays(usable.readings, data.clock, night)
  const away = options.daysAway ?? []
  const atHome = withoutDays(usable.readings, all, (day) => isIn(day.date, away))
  const counted = atHome === usable.readings ? all : localDays(atHome, data.clock, night)
  const { minimumHourW, figures } = usable.generation
    ? onlyNights(atHome, counted, options.estimator)
    : estimatorsOf(atHome, counted, usable.intervalSeconds)
  const summary = summariseData(data, usable, all)
  const choice = chooseEstimate(
    { minimumHourW, figures, generation: usable.generation },
    { coverage, estimator: options.estimator, night },
    { meanW: summary.meanW, hoursPerYear: settings.weeksPerYear * 168, days: counted.days },
  )
  const explained = explainBaseLoad(choice.figure, options, coverage, catalogue, settings)
  const shown = {
    data: summary,
    chosen: choice.chosen,
    daysAway: {
      named: away,
      suspected: usable.generation ? [] : suspectDaysAway(counted.days.filter(isComplete)),
      meanW: meanOfDays(all.days.filter(({ date }) => isIn(date, away))),
    },
    outages: usable.outages.map(({ from, to }) => ({ from: instantText(from), to: instantText(to) })),
    generation: usable.generation,
    inventory: explained?.explained ?? null,
  }
  return {
    methodVersion: METHOD_VERSION,
    ...revisionsUsed(catalogue),
    coverageProbability: coverage,
    night,
    ...shown,
    estimators: choice.estimators,
    warnings: [
      ...data.notes,
      ...baseLoadWarnings({
        ...shown,
        ...factsFor(usable, atHome),
        inventoryIsMore: explained?.inventoryIsMore ?? null,
        placeWord: placeWordOf(data),
      }),
    ],
    cautions: cautionsFor(settings.cautions, 'base-load'),
  }
}

const factsFor = ({ conflicts, overlaps, leftOut, shareOfZeros }: UsableReadings, readings: Readings) => ({
  conflicts,
  overlaps,
  leftOut,
  shareOfZeros,
  stepW: stepOf(readings),
})

/** @throws FaultyInput where every day was named as one away */
function withoutDays(readings: Readings, { days }: LocalDays, leave: (day: LocalDay) => boolean): Readings {
  const keep = new Uint8Array(readings.watts.length)
  for (const day of days) if (!leave(day)) keep.fill(1, day.from, day.to)
  if (keep.every((each) => each === 0))
    throw new FaultyInput([
      {
        pointer: '/daysAway',
        code: 'no-days-left',
        message:
          'Every day of the data is named as a day away; name only the days on which nobody was at home.',
      },
    ])
  return only(readings, (i) => keep[i] === 1)
}

function meanOfDays(days: readonly LocalDay[]): number | null {
  const seconds = days.reduce((sum, { coveredSeconds }) => sum + coveredSeconds, 0)
  if (seconds === 0) return null
  return significant(
    days.reduce((sum, { meanW, coveredSeconds }) => sum + meanW * coveredSeconds, 0) / seconds,
  )
}

/** The least difference between two of the readings that differ, W; null where all are the same. */
function stepOf({ watts }: Readings): number | null {
  const sorted = watts.slice().sort()
  let step = Infinity
  for (let i = 1; i < sorted.length; i++) {
    const difference = sorted[i]! - sorted[i - 1]!
    if (difference > 1e-6 * Math.abs(sorted[i]!) && difference < step) step = difference
  }
  return step === Infinity ? null : step
}
