import type { z } from 'zod'
import { type IntakeAnswer, intakeAnswerSchema } from '../../../schemas/intake.ts'
import { exampleEstimate } from '../examples.ts'

const { catalogueRevision, coverageProbability, currency, sampleData, total } = exampleEstimate

/** An answer to two lines, with detail=total; all of it is invented. */
const exampleAnswer: readonly IntakeAnswer[] = [
  {
    line: 1,
    reference: 'H-2041',
    status: 'estimated',
    estimate: { catalogueRevision, coverageProbability, currency, sampleData, total },
  },
  {
    line: 2,
    reference: null,
    status: 'problem',
    code: 'faulty-input',
    detail: 'There is no category "televisoin".',
    errors: [
      {
        pointer: '/devices/0/category',
        code: 'unknown-category',
        message: 'There is no category "televisoin".',
      },
    ],
  },
  { status: 'done', lines: 2, lastLine: 2, estimated: 1, stored: 0, alreadyStored: 0, problems: 1 },
]

/** The answer for its OpenAPI entry: each line is an IntakeAnswer. */
export const INTAKE_ANSWER = {
  description: 'One line of NDJSON for each household, and one that counts them',
  content: {
    'application/x-ndjson': {
      // A stream of them is sent, and no schema speaks of that.
      schema: intakeAnswerSchema as z.ZodType,
      examples: Object.fromEntries(
        exampleAnswer.map((value) => ['line' in value ? `line ${value.line}` : 'last line', { value }]),
      ),
    },
  },
}
