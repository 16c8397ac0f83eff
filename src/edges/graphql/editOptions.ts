import { z } from 'zod'
import { FaultyInput } from '../../core/fault.ts'
import { editReason } from '../../schemas/catalogueEdit.ts'
import { readShape } from '../../schemas/readShape.ts'
import { authorizeOperator, type Sender } from '../../useCases/authorize.ts'

const optionsSchema = z.strictObject({
  reason: editReason,
  confirm: z.boolean().default(false),
  basedOn: z.int().positive().optional(),
})

interface Given {
  readonly reason: string
  readonly confirm?: boolean | null | undefined
  readonly basedOn?: number
}

/**
 * What an edit's input says besides its subject. Who may not edit hears that first, not what is wrong with the input.
 * @throws DomainError key-required, scope-missing; FaultyInput
 */
export function editOptions(sender: Sender, { reason, confirm, basedOn }: Given) {
  authorizeOperator(sender, 'catalogue:edit')
  const { value, faults } = readShape(optionsSchema, { reason, confirm: confirm ?? false, basedOn })
  if (value === null) throw new FaultyInput(faults)
  return { ...value, basedOn: value.basedOn === undefined ? null : [value.basedOn] }
}

/** Faults of a subject, told at its place in the input. */
export async function faultsUnder<T>(pointer: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (error) {
    if (!(error instanceof FaultyInput)) throw error
    throw new FaultyInput(error.faults.map((fault) => ({ ...fault, pointer: `${pointer}${fault.pointer}` })))
  }
}
