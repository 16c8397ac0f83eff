import type { Catalogue } from '../catalogue/catalogue.ts'
import { revisionsUsed } from '../catalogue/revisionsUsed.ts'
import { cautionsFor } from '../cautions/cautions.ts'
import { METHOD_VERSION } from '../estimate/methodVersion.ts'
import type { OperatorSettings } from '../estimate/settings.ts'
import { significantInterval } from '../quantity/significant.ts'
import { evaluateReading } from '../readings/evaluateReading.ts'
import { compareLimit } from './compareLimit.ts'
import type { ComparedLimit, LimitAnswer, LimitQuestion, LimitReason, LimitVerdict } from './limitCheck.ts'
import { limitsFor } from './limitsFor.ts'

/** What every answer says first. */
const NO_COMPLIANCE_TEST =
  'A household reading is no compliance test. That takes a laboratory, a supply of stated quality, the methods of a standard such as IEC 62301, and up to four units of the model; and a device in use may have been repaired, changed or set otherwise since it was sold.'

/**
 * Holds a reading, with its meter's limits of error, against the published limits that its device may fall under.
 * @param question checked by checkLimitQuestion
 */
export function checkAgainstLimit(
  question: LimitQuestion,
  catalogue: Catalogue,
  settings: OperatorSettings,
): LimitAnswer {
  const coverageProbability = question.coverageProbability ?? settings.coverageProbability
  const power = powerOf(question, coverageProbability, catalogue, settings)
  const compared = limitsFor(settings.limits, question).map((limit) => compareLimit(limit, power.powerW))
  return {
    methodVersion: METHOD_VERSION,
    ...revisionsUsed(catalogue),
    coverageProbability,
    ...overall(compared),
    notice: NO_COMPLIANCE_TEST,
    ...power,
    compared,
    cautions: cautionsFor(settings.cautions, 'limit-check'),
  }
}

function powerOf(
  { reading, powerW, meters, supply, category, mode, catalogueRevision }: LimitQuestion,
  coverageProbability: number,
  catalogue: Catalogue,
  settings: OperatorSettings,
): Pick<LimitAnswer, 'powerW' | 'confidence' | 'warnings'> {
  if (!reading) return { powerW: significantInterval(powerW!), confidence: null, warnings: [] }
  const asked = { reading, meters, supply, category, mode, catalogueRevision, coverageProbability }
  const evaluation = evaluateReading(asked, catalogue, settings)
  return { powerW: evaluation.powerW, confidence: evaluation.confidence, warnings: evaluation.warnings }
}

/** One verdict over all limits that may apply: theirs where they agree. */
function overall(compared: readonly ComparedLimit[]): { verdict: LimitVerdict; reason: LimitReason } {
  const [first] = compared
  if (!first) return { verdict: 'cannot-be-told', reason: NO_LIMIT }
  const agree = compared.every(({ verdict }) => verdict === first.verdict)
  if (!agree) return { verdict: 'cannot-be-told', reason: DISAGREE }
  const strictest = first.verdict === 'below' ? lowest(compared) : highest(compared)
  return { verdict: first.verdict, reason: strictest.reason }
}

const lowest = (compared: readonly ComparedLimit[]) =>
  compared.reduce((a, b) => (b.limit.limitW < a.limit.limitW ? b : a))
const highest = (compared: readonly ComparedLimit[]) =>
  compared.reduce((a, b) => (b.aboveFromW > a.aboveFromW ? b : a))

const NO_LIMIT: LimitReason = {
  code: 'no-limit-applies',
  message:
    'No published limit that is known here applies to this mode, place and date. GET /v1/limits lists those that are known.',
}
const DISAGREE: LimitReason = {
  code: 'limits-disagree',
  message:
    'Several limits may apply and do not agree; compared lists them. Say more of the device: the day it was placed on the market, showsStatus, highNetworkAvailability, supplyType or ratedOutputW.',
}
