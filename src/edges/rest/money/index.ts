import type { RestContext } from '../restContext.ts'
import type { RestApp } from '../submitted.ts'
import { getEmissionFactors } from './getEmissionFactors.ts'
import { getTariffs } from './getTariffs.ts'
import { postTariffComparison } from './postTariffComparison.ts'

/** Lists of tariffs and emission factors, and what is reckoned with them; for single ones see reference/. */
export const MONEY_ROUTES: readonly ((app: RestApp, context: RestContext) => void)[] = [
  getTariffs,
  getEmissionFactors,
  postTariffComparison,
]
