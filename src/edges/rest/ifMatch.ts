import type { FastifyRequest } from 'fastify'
import { DomainError } from '../../core/fault.ts'
import type { ReferenceKind } from '../../core/reference/referenceEntry.ts'
import { catalogueTag, categoryTag, inventoryTag, overlayCategoryTag, referenceTag } from './conditional.ts'

/** The revision of the catalogue or of an overlay, or the version of an inventory. */
const NUMBER = /[rov](\d{1,10})\.[a-z0-9]+"$/
/** The version of a proposal: two numbers and a checksum, joined by hyphens. */
const VERSION = /\.p([-a-f\d]{1,50})\.[a-z0-9]+"$/

/**
 * The revisions that If-Match names, by tags of one category: what a use case calls the edit's basis. A weak tag never
 * matches (RFC 9110, 13.1.1), nor does that of another category or of another form; so they are no basis.
 * @returns null where the header is missing
 * @throws DomainError malformed-condition; precondition-required for `*`, which would match whatever somebody else made of it
 */
export const basisOfCategory = (request: FastifyRequest, code: string): number[] | null =>
  basis(request, (revision) => [categoryTag(code, revision)])

/** The same by tags of the catalogue as a whole, whichever way it was written. */
export const basisOfCatalogue = (request: FastifyRequest): number[] | null =>
  basis(request, (revision) => [catalogueTag(revision), catalogueTag(revision, 'csv')])

/** The same for an inventory, by its versions. */
export const basisOfInventory = (request: FastifyRequest, id: string): number[] | null =>
  basis(request, (version) => [inventoryTag({ id, version })])

/** The same by tags of one tariff or emission factor. */
export const basisOfReference = (
  request: FastifyRequest,
  kind: ReferenceKind,
  code: string,
): number[] | null => basis(request, (revision) => [referenceTag(kind, code, revision)])

/** The same by tags of a category of an organisation's own. */
export const basisOfOverlayCategory = (
  request: FastifyRequest,
  code: string,
  organisation: string,
): number[] | null => basis(request, (revision) => [overlayCategoryTag(code, organisation, revision)])

/** And `nothing` where the request asks that there be none yet. */
export const basisInOverlay = (
  request: FastifyRequest,
  code: string,
  organisation: string,
): number[] | 'nothing' | null =>
  asksForNothingThere(request) ? 'nothing' : basisOfOverlayCategory(request, code, organisation)

/** The same for a proposal, by the versions of it that the tags name. */
export function basisOfProposal(
  request: FastifyRequest,
  tagOf: (version: string) => string,
): string[] | null {
  const tags = namedTags(request)
  if (tags === null) return null
  const versions = tags.map((tag) => VERSION.exec(tag)?.[1] ?? '')
  return versions.filter((version) => tags.includes(tagOf(version)))
}

function basis(request: FastifyRequest, tagsAt: (revision: number) => readonly string[]): number[] | null {
  const tags = namedTags(request)
  if (tags === null) return null
  return tags.flatMap((tag) => {
    const revision = Number(NUMBER.exec(tag)?.[1] ?? 0)
    return tagsAt(revision).includes(tag) ? [revision] : []
  })
}

/** The tags of If-Match; null where the header is missing. */
function namedTags(request: FastifyRequest): string[] | null {
  const header = request.headers['if-match']
  if (header === undefined) return null
  if (header.trim() === '*')
    throw new DomainError(
      'precondition-required',
      'If-Match: * would overwrite whatever somebody else has stored meanwhile. Send the ETag of what you have read.',
    )
  return tagsIn(header)
}

function tagsIn(header: string): string[] {
  const members = header.split(',').map((member) => member.trim())
  if (members.some((member) => !/^(W\/)?"[\x21\x23-\x7e\x80-\xff]*"$/.test(member)))
    throw new DomainError(
      'malformed-condition',
      'If-Match must hold entity tags as ETag gave them, each in its double quotes.',
    )
  return members
}

/** True where the request asks that there be nothing yet (RFC 9110, 13.1.2). */
export const asksForNothingThere = (request: FastifyRequest) =>
  request.headers['if-none-match']?.trim() === '*'
