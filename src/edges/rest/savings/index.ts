import type { RestContext } from '../restContext.ts'
import type { RestApp } from '../submitted.ts'
import { getSavingsMeasures } from './getSavingsMeasures.ts'
import { postSavingsPlan } from './postSavingsPlan.ts'

/** The routes of what a household can do about standby. */
export const SAVINGS_ROUTES: readonly ((app: RestApp, context: RestContext) => void)[] = [
  postSavingsPlan,
  getSavingsMeasures,
]
