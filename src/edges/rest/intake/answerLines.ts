import type { Estimate } from '../../../core/estimate/estimate.ts'
import { FaultyInput } from '../../../core/fault.ts'
import type { IntakeAnswer } from '../../../schemas/intake.ts'
import type { LineAnswer } from '../../../useCases/takeIn.ts'
import { PROBLEMS, translate } from '../../errors.ts'

const PROBLEM_OF = { 'line-changed': 'intake-line-changed', 'reference-taken': 'inventory-exists' } as const

/**
 * The answer as lines of NDJSON: one for each household, and a last one that counts them. Where something fails after the first
 * lines are on their way the status can't be changed any more, so the last line says that and where to go on.
 * @param onFailure hears of what is our own fault
 */
export async function* answerLines(
  answers: AsyncIterable<LineAnswer>,
  { detail, after }: { readonly detail: 'full' | 'total'; readonly after: number },
  onFailure: (error: unknown) => void,
): AsyncGenerator<string> {
  const count = { lines: 0, lastLine: after, estimated: 0, stored: 0, alreadyStored: 0, problems: 0 }
  try {
    for await (const answer of answers) {
      count.lines++
      count.lastLine = answer.line
      count[COUNTED[answer.kind]]++
      yield lineOf(showLine(answer, detail))
    }
  } catch (error) {
    if (count.lines === 0) throw error
    const { code, detail: why } = translate(error)
    if (code === 'internal') onFailure(error)
    yield lineOf({ status: 'broken-off', ...count, code, detail: why })
    return
  }
  yield lineOf({ status: 'done', ...count })
}

const COUNTED = {
  estimated: 'estimated',
  stored: 'stored',
  'already-stored': 'alreadyStored',
  faulty: 'problems',
  'line-changed': 'problems',
  'reference-taken': 'problems',
} as const

const lineOf = (answer: IntakeAnswer) => `${JSON.stringify(answer)}\n`

function showLine(answer: LineAnswer, detail: 'full' | 'total'): IntakeAnswer {
  const { line, reference } = answer
  switch (answer.kind) {
    case 'estimated':
      return { line, reference, status: 'estimated', estimate: shown(answer.estimate, detail) }
    case 'stored':
    case 'already-stored': {
      const { kind, inventoryId, estimateId, estimate } = answer
      return { line, reference, status: kind, inventoryId, estimateId, estimate: shown(estimate, detail) }
    }
    case 'faulty': {
      const { code, detail: why, errors = [] } = translate(new FaultyInput(answer.faults))
      return { line, reference, status: 'problem', code, detail: why, errors: [...errors] }
    }
    case 'line-changed':
    case 'reference-taken': {
      const code = PROBLEM_OF[answer.kind]
      const { title, explanation } = PROBLEMS[code]
      const why = `${title}. ${explanation}`
      return { line, reference, status: 'problem', code, detail: why, inventoryId: answer.inventoryId }
    }
  }
}

function shown(estimate: Estimate, detail: 'full' | 'total') {
  if (detail === 'full') return estimate as IntakeAnswer extends { estimate: infer E } ? E : never
  const { catalogueRevision, coverageProbability, currency, sampleData, total } = estimate
  return { catalogueRevision, coverageProbability, currency, sampleData, total }
}
