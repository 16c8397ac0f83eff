import type { Catalogue } from '../catalogue/catalogue.ts'
import { revisionsUsed } from '../catalogue/revisionsUsed.ts'
import type { Category, Range } from '../catalogue/category.ts'
import { findCategory } from '../catalogue/findCategory.ts'
import { layerOf } from '../catalogue/layerOf.ts'
import { labelled } from '../catalogue/labelledCategory.ts'
import { cautionsFor } from '../cautions/cautions.ts'
import { METHOD_VERSION } from '../estimate/methodVersion.ts'
import type { OperatorSettings } from '../estimate/settings.ts'
import { type Interval, intervalOfSum, scaleInterval } from '../quantity/intervalOfSum.ts'
import { significantInterval } from '../quantity/significant.ts'
import type { Term } from '../quantity/term.ts'
import { assumptionsOf } from './assumptionsOf.ts'
import { guidanceOf } from './guidance.ts'
import { powerFactorOf } from './powerFactor.ts'
import type { PowerOfReading, ReadingContext } from './powerModel.ts'
import { powerOfReading } from './powerOfReading.ts'
import type { Reading } from './reading.ts'
import type { ReadingEvaluation, ReadingToEvaluate } from './readingEvaluation.ts'
import { significantSeries } from './series/significantSeries.ts'
import { lastSteps } from './steps/lastSteps.ts'
import type { Evaluated } from './steps/step.ts'
import { stepsOf } from './steps/stepsOf.ts'
import { uncertaintyRulesOf } from './uncertaintyRulesOf.ts'
import { usualDraw } from './usualDraw.ts'

/**
 * The power factor of a low-power mode where nothing is known of the device. Wide on purpose: the service's own
 * assumption; no-load chargers go down to 0.05 (from memory), and a heater's standby can be near 1.
 */
export const ANY_POWER_FACTOR: Range = { low: 0.05, typical: 0.4, high: 1 }

/**
 * Turns one reading of any kind into real power with its interval and flag, and says step by step how.
 *
 * The same reading against the same catalogue and settings gives the same result.
 * @param asked checked by checkReadingToEvaluate; an unknown category counts as none
 */
export function evaluateReading(
  asked: ReadingToEvaluate,
  catalogue: Catalogue,
  settings: OperatorSettings,
): ReadingEvaluation {
  const { reading, quantity = 1, coverageProbability = settings.coverageProbability } = asked
  const category = asked.category === undefined ? null : findCategory(catalogue, asked.category)
  const context = contextOf(asked, category, settings)
  const read = powerOfReading(reading, context)
  const evaluated = intervalsOf(read, context, coverageProbability)
  const times = (interval: Interval) => significantInterval(scaleInterval(interval, quantity))
  const { powerW, apparentPowerVa, reactivePowerVar } = evaluated
  return {
    ...revisionsUsed(catalogue),
    methodVersion: METHOD_VERSION,
    coverageProbability,
    kind: reading.kind,
    supply: context.supply,
    quantity,
    category: category?.code ?? null,
    categoryName: category?.name ?? null,
    catalogueLayer: category && layerOf(catalogue, category.code),
    sampleData: category !== null && labelled(category).sampleData,
    confidence: read.flag,
    powerW: times(powerW),
    ...(apparentPowerVa && { apparentPowerVa: times(apparentPowerVa) }),
    ...(reactivePowerVar && { reactivePowerVar: times(reactivePowerVar) }),
    ...(read.apparentPower && { powerFactor: powerFactorIn(reading, context) }),
    ...(read.series && { series: significantSeries(read.series) }),
    uncertaintyRules: uncertaintyRulesOf(reading, read.power, context, asked.maximumCurrentRatio),
    assumptions: assumptionsOf(reading, context),
    steps: [...stepsOf(reading, evaluated), ...lastSteps(times(powerW), quantity, coverageProbability)],
    warnings: read.warnings,
    guidance: guidanceOf(reading.kind),
    cautions: cautionsFor(settings.cautions, `reading-${reading.kind}`),
  }
}

function contextOf(
  { supply, meters = [], mode, year }: ReadingToEvaluate,
  category: Category | null,
  settings: OperatorSettings,
): ReadingContext {
  return {
    supply: supply ?? settings.supply,
    meters: new Map(meters.map((meter) => [meter.id, meter])),
    presets: settings.meterPresets,
    powerFactor: category?.powerFactor ?? ANY_POWER_FACTOR,
    usual: category && usualDraw(category, mode, year),
  }
}

function intervalsOf(read: PowerOfReading, context: ReadingContext, coverage: number): Evaluated {
  const of = (term: Term | undefined) => (term ? intervalOfSum([term], coverage) : null)
  return {
    read,
    context,
    powerW: intervalOfSum([read.power], coverage),
    apparentPowerVa: of(read.apparentPower),
    reactivePowerVar: of(read.reactivePower?.()),
  }
}

const powerFactorIn = (reading: Reading, { powerFactor }: ReadingContext): Range =>
  powerFactorOf('powerFactor' in reading ? reading.powerFactor : undefined, powerFactor).range
