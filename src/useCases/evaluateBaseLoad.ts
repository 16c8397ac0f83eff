import type { BaseLoadEvaluation, BaseLoadOptions } from '../core/baseLoad/baseLoadEvaluation.ts'
import { checkBaseLoadOptions } from '../core/baseLoad/checkBaseLoadOptions.ts'
import { evaluateBaseLoad as evaluate } from '../core/baseLoad/evaluateBaseLoad.ts'
import type { IntervalData } from '../core/baseLoad/intervalData.ts'
import { FaultyInput, type Submitted } from '../core/fault.ts'
import type { Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'
import { settingsAt } from './settingsAt.ts'

/**
 * Reads a base load off interval data. What is said beside the data is checked first, so that a long file is not read
 * for nothing.
 * @param readData reads the data, and throws FaultyInput where it can't be
 * @throws FaultyInput naming every fault at once; DomainError unknown-revision, unknown-overlay-revision, unknown-reference-revision
 */
export async function evaluateBaseLoad(
  deps: Deps,
  sender: Sender,
  submitted: Submitted<BaseLoadOptions>,
  readData: () => Promise<IntervalData>,
): Promise<BaseLoadEvaluation> {
  const options = submitted.value
  const catalogue = await callersCatalogue(deps, sender, options?.inventory)
  const settings = await settingsAt(deps, options?.inventory?.referenceRevision)
  const faults = [...submitted.faults, ...checkBaseLoadOptions(submitted, catalogue, settings)]
  if (options === null || faults.length > 0) throw new FaultyInput(faults)
  return evaluate(await readData(), options, catalogue, settings)
}
