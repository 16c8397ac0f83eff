import { createHash } from 'node:crypto'
import { z } from 'zod'
import type { RevisionsUsed } from '../core/catalogue/revisionsUsed.ts'
import { DomainError } from '../core/fault.ts'
import { readShape } from '../schemas/readShape.ts'

const cursorSchema = z.strictObject({
  after: z.string(),
  revision: z.int().positive(),
  overlay: z.int().nonnegative(),
  filter: z.string(),
})
export type CategoryCursor = z.output<typeof cursorSchema>

interface Filter {
  readonly group?: string | undefined
  readonly search?: string | undefined
  readonly includeRetired: boolean
}

/** The revisions that a page read, of the catalogue and of the figures of the caller's organisation over it. */
interface Read {
  readonly catalogueRevision: number
  readonly overlayRevision: number
  /** Whose own figures may lie over the catalogue; null where no key was sent. */
  readonly organisation: string | null
}
type Asked = Pick<Read, 'organisation'> & { readonly [K in keyof RevisionsUsed]?: number | undefined }

/**
 * Tells one filter from another, and, where own figures were read, whose; a digest, since words to search for may be long.
 */
const digestOf = ({ group, search, includeRetired }: Filter, overlay: number, organisation: string | null) =>
  createHash('sha256')
    .update(
      JSON.stringify([group ?? null, search ?? null, includeRetired, overlay === 0 ? null : organisation]),
    )
    .digest('base64url')

/** Where the next page starts: after which code, of which revisions, under which filter. Opaque to callers. */
export function writeCursor(after: string, read: Read, filter: Filter): string {
  const { catalogueRevision: revision, overlayRevision: overlay, organisation } = read
  const cursor: CategoryCursor = { after, revision, overlay, filter: digestOf(filter, overlay, organisation) }
  return Buffer.from(JSON.stringify(cursor)).toString('base64url')
}

/**
 * Reads a cursor for a request with a filter and, where it names any, revisions.
 * @throws DomainError faulty-cursor, where it was not written here or belongs to another filter, caller or revision
 */
export function readCursor(text: string, filter: Filter, asked: Asked): CategoryCursor {
  const cursor = readShape(cursorSchema, parse(text)).value
  if (cursor === null) throw refusal('The cursor was not made by this service.')
  if (cursor.filter !== digestOf(filter, cursor.overlay, asked.organisation))
    throw refusal(
      'The cursor belongs to a page with another filter (group, search or includeRetired), or another key.',
    )
  const { catalogueRevision = cursor.revision, overlayRevision = cursor.overlay } = asked
  if (catalogueRevision !== cursor.revision)
    throw refusal(`The cursor belongs to catalogue revision ${cursor.revision}, not ${catalogueRevision}.`)
  if (overlayRevision !== cursor.overlay)
    throw refusal(`The cursor belongs to overlay revision ${cursor.overlay}, not ${overlayRevision}.`)
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
