import type { RestContext } from '../restContext.ts'
import type { RestApp } from '../submitted.ts'
import { getEmissionFactor } from './getEmissionFactor.ts'
import { getEmissionFactors } from './getEmissionFactors.ts'
import { getTariff } from './getTariff.ts'
import { getTariffs } from './getTariffs.ts'
import { postTariffComparison } from './postTariffComparison.ts'

/** The routes of tariffs and emission factors. */
export const MONEY_ROUTES: readonly ((app: RestApp, context: RestContext) => void)[] = [
  getTariffs,
  getTariff,
  getEmissionFactors,
  getEmissionFactor,
  postTariffComparison,
]
