import { FaultyInput, type Submitted } from '../core/fault.ts'
import { checkStock } from '../core/population/checkStock.ts'
import { checkSurvey } from '../core/population/checkSurvey.ts'
import { estimateStock } from '../core/population/estimateStock.ts'
import { estimateSurvey } from '../core/population/estimateSurvey.ts'
import type { Stock, StockEstimate } from '../core/population/stock.ts'
import type { Survey, SurveyEstimate } from '../core/population/survey.ts'
import type { Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'
import { settingsAt } from './settingsAt.ts'

/**
 * What many homes draw, by the method that the request names.
 * @throws FaultyInput naming every fault of shape and of the trade at once; DomainError unknown-revision, unknown-overlay-revision
 */
export async function estimatePopulation(
  deps: Deps,
  sender: Sender,
  submitted: Submitted<Survey | Stock>,
): Promise<SurveyEstimate | StockEstimate> {
  return methodOf(submitted.raw) === 'stock'
    ? estimateFromStock(deps, sender, submitted as Submitted<Stock>)
    : estimateFromSurvey(deps, submitted as Submitted<Survey>)
}

const methodOf = (raw: unknown): unknown =>
  typeof raw === 'object' && raw !== null && 'method' in raw ? raw.method : undefined

/** From surveyed homes. @throws FaultyInput */
export async function estimateFromSurvey(
  { settings }: Deps,
  submitted: Submitted<Survey>,
): Promise<SurveyEstimate> {
  const faults = [...submitted.faults, ...checkSurvey(submitted.raw)]
  if (submitted.value === null || faults.length > 0) throw new FaultyInput(faults)
  return estimateSurvey(submitted.value, settings)
}

/** From ownership, count, draw and hours. @throws FaultyInput; DomainError unknown-revision, unknown-overlay-revision, unknown-reference-revision */
export async function estimateFromStock(
  deps: Deps,
  sender: Sender,
  submitted: Submitted<Stock>,
): Promise<StockEstimate> {
  const catalogue = await callersCatalogue(deps, sender, submitted.value)
  const settings = await settingsAt(deps, submitted.value?.referenceRevision)
  const faults = [...submitted.faults, ...checkStock(submitted.raw, catalogue, settings)]
  if (submitted.value === null || faults.length > 0) throw new FaultyInput(faults)
  return estimateStock(submitted.value, catalogue, settings)
}
