import type { FastifyReply } from 'fastify'
import type { CategoryChange } from '../../../core/catalogue/categoryChange.ts'
import type { Part } from '../../../useCases/part.ts'
import { CHANGE_LIST } from '../../catalogueLists.ts'
import { type ListFilter, readListCursor, writeListCursor } from '../../listCursor.ts'
import { linkToNext } from '../linkToNext.ts'

/**
 * The code after which a page of changes starts.
 * @param of the revision, or the two, that the changes belong to
 * @throws DomainError faulty-cursor
 */
export const changesAfter = (cursor: string | undefined, of: ListFilter): string | undefined =>
  cursor === undefined ? undefined : readListCursor(cursor, CHANGE_LIST, of)

/** The cursor of the page after this one, which the header Link names too; null on the last. */
export function nextChanges(
  reply: FastifyReply,
  { items, hasAfter }: Part<CategoryChange>,
  address: string,
  of: ListFilter,
  limit: number,
): string | null {
  if (!hasAfter) return null
  const cursor = writeListCursor(items.at(-1)!, CHANGE_LIST, of)
  reply.header('link', linkToNext(address, { limit }, cursor))
  return cursor
}
