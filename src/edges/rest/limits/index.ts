import type { RestContext } from '../restContext.ts'
import type { RestApp } from '../submitted.ts'
import { getCautions } from './getCautions.ts'
import { getLimits } from './getLimits.ts'
import { postLimitCheck } from './postLimitCheck.ts'

/** The routes of published limits and of cautions. */
export const LIMIT_ROUTES: readonly ((app: RestApp, context: RestContext) => void)[] = [
  getLimits,
  postLimitCheck,
  getCautions,
]
