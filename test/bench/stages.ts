import type { Catalogue } from '../../src/core/catalogue/catalogue.ts'
import type * as EstimateModule from '../../src/core/estimate/estimateHousehold.ts'
import type { EstimateSettings } from '../../src/core/estimate/settings.ts'
import type * as CheckModule from '../../src/core/inventory/checkHousehold.ts'
import type { Household } from '../../src/core/inventory/household.ts'
import type * as SchemaModule from '../../src/schemas/household.ts'
import type * as ShapeModule from '../../src/schemas/readShape.ts'
import { cautions } from '../helpers/cautions.ts'
import { limits } from '../helpers/limits.ts'
import { measures } from '../helpers/measures.ts'
import { meterPresets } from '../helpers/meterPresets.ts'

const SETTINGS: EstimateSettings = {
  supply: { volts: 230, tolerancePercent: 6, hertz: 50 },
  tariffs: new Map(),
  defaultTariffCode: 'none',
  emissionFactors: new Map(),
  defaultEmissionFactorCode: 'none',
  referenceRevision: 1,
  meterPresets,
  limits,
  measures,
  cautions,
  weeksPerYear: 365 / 7,
  coverageProbability: 0.9,
}

/** A module as it is shipped, so that nothing that only development adds is measured. */
const built = (name: string): Promise<unknown> =>
  import(new URL(`../../dist/src/${name}.js`, import.meta.url).href)

export interface Stage {
  readonly stage: string
  readonly microseconds: number
}

/** Mean time of one call, in microseconds; the values are used in turn. The first quarter of the time warms up and is not counted. */
function timeOf<T>(values: readonly T[], seconds: number, work: (value: T) => unknown): number {
  const run = (limitMs: number) => {
    const start = performance.now()
    let done = 0
    while (performance.now() - start < limitMs) work(values[done++ % values.length]!)
    return ((performance.now() - start) / done) * 1000
  }
  run(seconds * 250)
  return run(seconds * 1000)
}

/** Where the time of one estimate goes on one thread, without HTTP. Every household carries its own prices. */
export async function measureStages(
  households: readonly Household[],
  catalogue: Catalogue,
  seconds: number,
): Promise<Stage[]> {
  const { estimate } = (await built('core/estimate/estimateHousehold')) as typeof EstimateModule
  const { checkHousehold } = (await built('core/inventory/checkHousehold')) as typeof CheckModule
  const { readShape } = (await built('schemas/readShape')) as typeof ShapeModule
  const { householdSchema } = (await built('schemas/household')) as typeof SchemaModule
  const texts = households.map((household) => JSON.stringify(household))
  const answers = households.map((household) => estimate(household, catalogue, SETTINGS))
  const time = (stage: string, microseconds: number) => ({ stage, microseconds })
  return [
    time(
      'JSON.parse',
      timeOf(texts, seconds, (text) => JSON.parse(text) as unknown),
    ),
    time(
      'shape (zod)',
      timeOf(households, seconds, (household) => readShape(householdSchema, household)),
    ),
    time(
      'rules',
      timeOf(households, seconds, (household) => checkHousehold(household, catalogue, SETTINGS)),
    ),
    time(
      'estimate',
      timeOf(households, seconds, (household) => estimate(household, catalogue, SETTINGS)),
    ),
    time(
      'JSON.stringify',
      timeOf(answers, seconds, (answer) => JSON.stringify(answer)),
    ),
  ]
}
