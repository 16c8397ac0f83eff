import type { Catalogue } from '../core/catalogue/catalogue.ts'
import { DomainError } from '../core/fault.ts'
import type { Sender } from './authorize.ts'
import { catalogueOf } from './catalogueOf.ts'
import type { Deps } from './deps.ts'

/** Which states of the catalogue and of the overlay a request asks for; the newest where it says nothing. */
export interface AskedRevisions {
  readonly catalogueRevision?: number | undefined
  /** 0 asks for the shared catalogue alone. */
  readonly overlayRevision?: number | undefined
}

/**
 * The catalogue as the caller sees it: the shared one, with what the caller's organisation has laid over it, and nothing of
 * any other. Touches no database unless a past revision is asked for, or the organisation was not heard of for long.
 * @throws DomainError unknown-revision, unknown-overlay-revision
 */
export async function callersCatalogue(
  deps: Deps,
  { caller }: Pick<Sender, 'caller'>,
  asked: AskedRevisions | null | undefined,
): Promise<Catalogue> {
  const shared = await catalogueOf(deps, asked?.catalogueRevision)
  const revision = asked?.overlayRevision
  if (revision === 0) return shared
  if (caller === null) {
    if (revision === undefined) return shared
    throw unknownOverlayRevision(revision, 0)
  }
  const { overlayMemory } = deps
  const newest = await overlayMemory.current(caller.organisation)
  const overlay =
    revision === undefined || revision === newest.revision
      ? newest
      : await overlayMemory.at(caller.organisation, revision)
  if (overlay === null) throw unknownOverlayRevision(revision!, newest.revision)
  return overlayMemory.over(shared, overlay)
}

/** The same words whatever other organisations have. */
export const unknownOverlayRevision = (revision: number, newest: number) =>
  new DomainError(
    'unknown-overlay-revision',
    newest === 0
      ? `There is no overlay revision ${revision}: the key's organisation has laid nothing over the shared catalogue, or no key was sent. Leave the revision out.`
      : `Your organisation has no overlay revision ${revision}; the newest is ${newest}. Leave the revision out to use the newest, or ask for 0 to use the shared catalogue alone.`,
    { newest },
  )
