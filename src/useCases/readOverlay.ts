import { catalogueOf } from '../core/catalogue/catalogue.ts'
import type { FieldChange } from '../core/catalogue/fieldChanges.ts'
import { categoryChange } from '../core/catalogue/categoryChange.ts'
import { type LabelledCategory, labelled } from '../core/catalogue/labelledCategory.ts'
import type { Overlay } from '../core/catalogue/overlay.ts'
import type { OverlayRevision, OverlayRevisionChange } from '../core/catalogue/overlayRevision.ts'
import type { Window } from '../stores/window.ts'
import { authorize, type Sender } from './authorize.ts'
import { unknownOverlayRevision } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'
import { categoryPage, type CategoryPage, type PageRequest } from './listCategoryPage.ts'
import { numbersIn } from './numbersIn.ts'
import type { Part } from './part.ts'
import { unknownOverlayCategory } from './removeFromOverlay.ts'

/** The overlay of the caller's own organisation; no other can be named. @throws DomainError key-required, scope-missing */
async function ownOverlay({ overlayMemory }: Deps, sender: Sender): Promise<Overlay> {
  const { caller } = authorize(sender, 'catalogue:edit')
  return overlayMemory.current(caller.organisation)
}

/**
 * What the caller's organisation has laid over the shared catalogue, now or at an older revision, in the order of the codes.
 * @throws DomainError key-required, scope-missing, unknown-overlay-revision
 */
export async function listOverlay(
  deps: Deps,
  sender: Sender,
  asked: number | undefined,
  page: PageRequest,
): Promise<CategoryPage & { readonly organisation: string }> {
  const newest = await ownOverlay(deps, sender)
  const { organisation } = newest
  const overlay = asked === undefined ? newest : await deps.overlayMemory.at(organisation, asked)
  if (overlay === null) throw unknownOverlayRevision(asked!, newest.revision)
  const { revision, categories, changedIn } = overlay
  const alone = { ...catalogueOf(revision, categories.values(), changedIn), overlay }
  return { ...categoryPage(alone, { includeRetired: true }, page), organisation }
}

/** One own category as it was laid. @throws DomainError key-required, scope-missing, unknown-overlay-category */
export async function readOverlayCategory(
  deps: Deps,
  sender: Sender,
  code: string,
): Promise<{
  readonly category: LabelledCategory
  readonly changedIn: number
  readonly organisation: string
  readonly overlayRevision: number
}> {
  const { organisation, revision, categories, changedIn } = await ownOverlay(deps, sender)
  const category = categories.get(code)
  if (category === undefined) throw unknownOverlayCategory(code)
  return {
    category: labelled(category, 'organisation'),
    changedIn: changedIn.get(code)!,
    organisation,
    overlayRevision: revision,
  }
}

/** The revisions of the own overlay, newest first. @throws DomainError key-required, scope-missing */
export async function listOverlayRevisions(
  deps: Deps,
  sender: Sender,
  window: Window<number>,
): Promise<Part<OverlayRevision> & { readonly total: number; readonly organisation: string }> {
  const { organisation, revision: total } = await ownOverlay(deps, sender)
  const { from, to, ...part } = numbersIn(total, window)
  const items = from > to ? [] : await deps.overlayStore.revisions(organisation, from, to)
  return { items, ...part, total, organisation }
}

/** @throws DomainError key-required, scope-missing, unknown-overlay-revision */
export async function readOverlayRevision(
  deps: Deps,
  sender: Sender,
  number: number,
): Promise<OverlayRevisionChange & { readonly fields: readonly FieldChange[] }> {
  const { organisation, revision } = await ownOverlay(deps, sender)
  const found = await deps.overlayStore.revision(organisation, number)
  if (found === null) throw unknownOverlayRevision(number, revision)
  const { before, after } = found
  return { ...found, fields: (before && after && categoryChange(before, after)?.fields) ?? [] }
}
