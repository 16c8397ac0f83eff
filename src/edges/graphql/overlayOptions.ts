import { z } from 'zod'
import { FaultyInput } from '../../core/fault.ts'
import { editReason } from '../../schemas/catalogueEdit.ts'
import { readShape } from '../../schemas/readShape.ts'
import { authorize, type Sender } from '../../useCases/authorize.ts'

const optionsSchema = z.strictObject({
  reason: editReason,
  confirm: z.boolean().default(false),
  basedOn: z.int().positive().nullable(),
})

interface Given {
  readonly reason: string
  readonly confirm?: boolean | null | undefined
  readonly basedOn?: number | null | undefined
}

/**
 * What the input of an edit of own figures says besides its subject. Who may not edit hears that first.
 * @throws DomainError key-required, scope-missing; FaultyInput
 */
export function overlayOptions(sender: Sender, { reason, confirm, basedOn }: Given) {
  authorize(sender, 'catalogue:edit')
  const given = { reason, confirm: confirm ?? false, basedOn: basedOn ?? null }
  const { value, faults } = readShape(optionsSchema, given)
  if (value === null) throw new FaultyInput(faults)
  const known = value.basedOn === null ? null : [value.basedOn]
  return { reason: value.reason, confirm: value.confirm, known, basedOn: known ?? ('nothing' as const) }
}
