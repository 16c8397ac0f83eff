import { createHash } from 'node:crypto'
import { z } from 'zod'
import { DomainError } from '../core/fault.ts'
import { readShape } from '../schemas/readShape.ts'

const cursorSchema = z.strictObject({ after: z.string(), revision: z.int().positive(), filter: z.string() })
export type CategoryCursor = z.output<typeof cursorSchema>

interface Filter {
  readonly group?: string | undefined
  readonly search?: string | undefined
  readonly includeRetired: boolean
}

/** Tells one filter from another; a digest, since words to search for may be long. */
const digestOf = ({ group, search, includeRetired }: Filter) =>
  createHash('sha256')
    .update(JSON.stringify([group ?? null, search ?? null, includeRetired]))
    .digest('base64url')

/** Where the next page starts: after which code, of which revision, under which filter. Opaque to callers. */
export function writeCursor(after: string, revision: number, filter: Filter): string {
  const cursor: CategoryCursor = { after, revision, filter: digestOf(filter) }
  return Buffer.from(JSON.stringify(cursor)).toString('base64url')
}

/**
 * Reads a cursor for a request with a filter and, where it names one, a revision.
 * @throws DomainError faulty-cursor, where it was not written here or belongs to another filter or revision
 */
export function readCursor(text: string, filter: Filter, revision: number | undefined): CategoryCursor {
  const cursor = readShape(cursorSchema, parse(text)).value
  if (cursor === null) throw refusal('The cursor was not made by this service.')
  if (cursor.filter !== digestOf(filter))
    throw refusal('The cursor belongs to a page with another filter (group, search or includeRetired).')
  if (revision !== undefined && revision !== cursor.revision)
    throw refusal(`The cursor belongs to catalogue revision ${cursor.revision}, not ${revision}.`)
  return cursor
}

const refusal = (message: string) => new DomainError('faulty-cursor', message)

function parse(text: string): unknown {
  try {
    return JSON.parse(Buffer.from(text, 'base64url').toString('utf8'))
  } catch {
    return null // A text that is no JSON is refused just as a JSON of the wrong shape.
  }
}
