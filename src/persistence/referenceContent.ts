import { REFERENCE_KINDS, type ReferenceEntry } from '../core/reference/referenceEntry.ts'
import type { Prisma } from './generated/client.ts'

/**
 * An entry from its stored content. Only this service writes it, after its shape and the rules of the trade were checked,
 * and the database lets nobody change it, nor reorders its fields; so only the kind is looked at.
 */
export function readEntry(kind: string, content: unknown): ReferenceEntry {
  if (!REFERENCE_KINDS.some((known) => known === kind))
    throw new Error(`"${kind}" is no kind of reference data.`)
  return { kind, content } as ReferenceEntry
}

export const writeEntry = ({ kind, content }: ReferenceEntry) => ({
  kind,
  code: content.code,
  retired: content.retired,
  content: content as unknown as Prisma.InputJsonObject,
})
