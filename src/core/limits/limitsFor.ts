import type { Limit, LimitCondition } from './limit.ts'
import type { LimitQuestion } from './limitCheck.ts'
import { marketSpan } from './marketSpan.ts'

/**
 * The limits that a device may fall under, in the order of their codes: of its place, its mode, the day or year on which it
 * was placed on the market, and what is known of it. What is not known leaves every limit in that could apply.
 */
export function limitsFor(limits: ReadonlyMap<string, Limit>, question: LimitQuestion): Limit[] {
  const { limitCode } = question
  const found =
    limitCode === undefined
      ? [...limits.values()].filter((limit) => mayApply(limit, question))
      : [limits.get(limitCode)].flatMap((limit) => limit ?? [])
  return found.sort((a, b) => (a.code < b.code ? -1 : 1))
}

function mayApply(limit: Limit, question: LimitQuestion): boolean {
  return (
    limit.purpose === 'placing-on-the-market' &&
    limit.jurisdiction === question.jurisdiction &&
    limit.mode === question.mode &&
    inTime(limit, question.placedOnMarket) &&
    conditionMayHold(limit.condition, question) &&
    (limit.supplyType === null ||
      question.supplyType === undefined ||
      limit.supplyType === question.supplyType) &&
    outputMayFit(limit, question.ratedOutputW)
  )
}

function inTime({ appliesFrom, appliesUntil }: Limit, placedOnMarket: string | undefined): boolean {
  if (placedOnMarket === undefined) return true
  const [first, last] = marketSpan(placedOnMarket)
  return (appliesFrom === null || appliesFrom <= last) && (appliesUntil === null || appliesUntil >= first)
}

function conditionMayHold(
  condition: LimitCondition,
  { showsStatus, highNetworkAvailability }: LimitQuestion,
): boolean {
  switch (condition) {
    case 'any':
      return true
    case 'reactivation-only':
      return showsStatus !== true
    case 'information-or-status-display':
      return showsStatus !== false
    case 'other-networked':
      return highNetworkAvailability !== true
    case 'high-network-availability':
      return highNetworkAvailability !== false
  }
}

function outputMayFit({ outputAboveW, outputUpToW }: Limit, output: number | undefined): boolean {
  if (output === undefined) return true
  return (outputAboveW === null || output > outputAboveW) && (outputUpToW === null || output <= outputUpToW)
}
