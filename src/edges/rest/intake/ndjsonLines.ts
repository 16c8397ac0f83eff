import type { Submitted } from '../../../core/fault.ts'
import type { IntakeHousehold } from '../../../core/inventory/intake.ts'
import { intakeHouseholdSchema } from '../../../schemas/intake.ts'
import { readShape } from '../../../schemas/readShape.ts'
import type { IntakeLine } from '../../../useCases/takeIn.ts'
import { type TextLine, textLines } from './textLines.ts'

/** Households of an NDJSON body, one a line. Empty lines are counted and passed over. */
export async function* ndjsonLines(
  body: AsyncIterable<Uint8Array>,
  after: number,
): AsyncGenerator<IntakeLine> {
  for await (const line of textLines(body)) {
    if (line.number <= after || line.text?.trim() === '') continue
    yield { number: line.number, submitted: submittedOf(line) }
  }
}

function submittedOf({ text, problem }: TextLine): Submitted<IntakeHousehold> {
  if (text === null) return unreadable(problem === 'too-long' ? 'line-too-long' : 'not-utf-8')
  try {
    return readShape(intakeHouseholdSchema, JSON.parse(text))
  } catch {
    return unreadable('malformed-json') // Answered as the fault of this line.
  }
}

const MESSAGES = {
  'line-too-long': 'The line is longer than 1 MiB. Send fewer devices or shorter series of samples.',
  'not-utf-8': 'The line is not UTF-8.',
  'malformed-row':
    'A quote in this row is not closed, or stands in the middle of a cell. Cells hold no line breaks here.',
  'wrong-number-of-cells': 'The row has not as many cells as the header.',
  'malformed-json':
    'The line is not one JSON object. In NDJSON every household stands on one line of its own.',
} as const

/** A line that nothing can be made of. */
export const unreadable = (code: keyof typeof MESSAGES): Submitted<IntakeHousehold> => ({
  raw: undefined,
  value: null,
  faults: [{ pointer: '', code, message: MESSAGES[code] }],
})
