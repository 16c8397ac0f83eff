import type { z } from 'zod'
import type { Submitted } from '../../core/fault.ts'
import { readShape } from '../../schemas/readShape.ts'
import { faultsUnder } from './editOptions.ts'
import { householdOfInput } from './householdOfInput.ts'
import { withPointersInto } from './withPointersInto.ts'

/** A draft in the shape of REST's body, laid over what there is before, and checked by the same schema. */
export function referenceDraft<T>(schema: z.ZodType<T>, input: object, before: object = {}): Submitted<T> {
  return readShape(schema, { ...before, ...(householdOfInput(input) as object) })
}

/** Does the work, and tells the faults of such a draft at its place in the input. */
export const faultsInDraft = <T>(pointer: string, input: object, work: () => Promise<T>): Promise<T> =>
  faultsUnder(pointer, () => withPointersInto(input, work))
