import { createHash } from 'node:crypto'
import { z } from 'zod'
import { DomainError } from '../core/fault.ts'
import { readShape } from '../schemas/readShape.ts'

/** A list that is read from the store page by page, and how a place in it is written in a cursor. */
export interface StoredList<T, Place> {
  readonly name: string
  /** What a written place looks like. */
  readonly form: RegExp
  readonly read: (text: string) => Place
  readonly write: (item: T) => string
}
export type ListFilter = Readonly<Record<string, unknown>>

const cursorSchema = z.strictObject({ place: z.string(), of: z.string() })

/** A list and its filter, told from others; a digest, since the filter may be long. */
const digestOf = (list: string, filter: ListFilter) => {
  const named = Object.entries(filter).filter(([, value]) => value !== undefined)
  return createHash('sha256')
    .update(JSON.stringify([list, named.sort(([one], [other]) => (one < other ? -1 : 1))]))
    .digest('base64url')
}

/** Where a list goes on after an item, under which filter. Opaque to callers. */
export function writeListCursor<T>(item: T, list: StoredList<T, unknown>, filter: ListFilter): string {
  const cursor: z.output<typeof cursorSchema> = {
    place: list.write(item),
    of: digestOf(list.name, filter),
  }
  return Buffer.from(JSON.stringify(cursor)).toString('base64url')
}

/**
 * The place in a cursor.
 * @throws DomainError faulty-cursor, where it was not written here or belongs to another list or filter
 */
export function readListCursor<Place>(
  text: string,
  list: StoredList<never, Place>,
  filter: ListFilter,
): Place {
  const cursor = readShape(cursorSchema, parse(text)).value
  if (cursor === null || !list.form.test(cursor.place))
    throw new DomainError('faulty-cursor', 'The cursor was not made by this service.')
  if (cursor.of !== digestOf(list.name, filter))
    throw new DomainError('faulty-cursor', 'The cursor belongs to another list, or to another filter of it.')
  return list.read(cursor.place)
}

function parse(text: string): unknown {
  try {
    return JSON.parse(Buffer.from(text, 'base64url').toString('utf8'))
  } catch {
    return null // A text that is no JSON is refused just as a JSON of the wrong shape.
  }
}
