import type { FastifyReply, FastifyRequest } from 'fastify'
import { DomainError } from '../../../core/fault.ts'
import { categoryAnswerSchema } from '../../../schemas/category.ts'
import type { EditedOverlay } from '../../../useCases/editOverlay.ts'
import { jsonAnswer } from '../answers.ts'
import { overlayCategoryTag } from '../conditional.ts'
import { exampleOwnCategory } from './examples.ts'
import { OWN_TAG } from './ownTag.ts'

const addressOf = (code: string) => `/v1/overlay/categories/${code}`

/** Answers an edit with the own category as it is now, and the tag that the next edit is based on. */
export function sendLaid(
  reply: FastifyReply,
  organisation: string,
  { own, changedIn, overlayRevision, revision }: EditedOverlay,
): FastifyReply {
  const { code } = own!
  const isNew = revision?.action === 'lay'
  return reply
    .code(isNew ? 201 : 200)
    .headers({
      etag: overlayCategoryTag(code, organisation, changedIn),
      'overlay-revision': overlayRevision,
      'cache-control': 'no-store',
      'content-location': addressOf(code),
      ...(isNew && { location: addressOf(code) }),
    })
    .send(own)
}

/** Tells whoever comes too late the tag to base the next attempt on, beside what changed. */
export async function withOwnTag(
  { caller }: FastifyRequest,
  code: string,
  edit: Promise<EditedOverlay>,
): Promise<EditedOverlay> {
  try {
    return await edit
  } catch (error) {
    if (!(error instanceof DomainError) || error.code !== 'stale-overlay' || caller === null) throw error
    const { changedIn } = error.details as { readonly changedIn: number | null }
    const etag = changedIn === null ? null : overlayCategoryTag(code, caller.organisation, changedIn)
    throw new DomainError(error.code, error.message, { ...error.details, etag })
  }
}

const HEADERS = {
  ...OWN_TAG,
  'Overlay-Revision': {
    type: 'integer',
    description: "The newest revision of your organisation's own figures",
  },
  'Content-Location': { type: 'string', description: 'Address of the own category' },
} as const

/** How an edit is answered, for its OpenAPI entry. */
export const LAID_ANSWERS = {
  200: jsonAnswer('The own category as it is now', categoryAnswerSchema, exampleOwnCategory, HEADERS),
  201: jsonAnswer('The own category, which is new', categoryAnswerSchema, exampleOwnCategory, {
    ...HEADERS,
    Location: { type: 'string', description: 'Address of the own category' },
  }),
}

/** What every edit of an own category may answer besides. */
export const EDITS_OVERLAY = [
  'malformed-condition',
  'precondition-required',
  'stale-overlay',
  'address-too-long',
] as const
