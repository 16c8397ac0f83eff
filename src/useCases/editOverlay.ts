import type { Origin } from '../core/access/caller.ts'
import type { Category } from '../core/catalogue/category.ts'
import { categoryChange } from '../core/catalogue/categoryChange.ts'
import { checkEdit } from '../core/catalogue/checkEdit.ts'
import { type LabelledCategory, labelled } from '../core/catalogue/labelledCategory.ts'
import { overlayFaults } from '../core/catalogue/overlayFaults.ts'
import type { OverlayAction, OverlayRevision } from '../core/catalogue/overlayRevision.ts'
import { DomainError } from '../core/fault.ts'
import { authorize, type Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import type { EditOptions, Intended } from './editCategory.ts'
import { type OverlayBasis, refuseOtherBasis } from './overlayBasis.ts'
import type { OverlaySubject } from './overlaySubject.ts'

export interface OverlayOptions extends EditOptions {
  readonly basedOn: OverlayBasis
}

export interface EditedOverlay {
  /** The organisation's own category; null where it was taken away. */
  readonly own: LabelledCategory | null
  /** The overlay revision that gave it its present state. */
  readonly changedIn: number
  readonly overlayRevision: number
  /** The revision that the edit made; null where nothing changed. */
  readonly revision: OverlayRevision | null
}

/** More than a utility has kinds of devices; so that no organisation fills the memory that all share. */
const MOST_CATEGORIES = 2_000
/** Each lost race means that somebody else's edit was stored; so many in a row mean that something is wrong. */
const ATTEMPTS = 100

/**
 * The one way by which an organisation's own figures are edited: the caller's scope, what the edit is based on, the rules
 * of the trade as for the shared catalogue, one revision. The overlay in memory holds it when this is done.
 * @param intend what the category is to become; null takes it away. Asked again where another process was faster
 * @throws DomainError key-required, scope-missing, precondition-required, already-there, stale-overlay, large-change,
 * overlay-full; FaultyInput; whatever `intend` throws
 */
export async function editOverlay(
  deps: Deps,
  sender: Sender,
  code: string,
  options: OverlayOptions,
  intend: (subject: OverlaySubject) => Intended | null,
): Promise<EditedOverlay> {
  const origin = authorize(sender, 'catalogue:edit')
  return deps.overlayMemory.inTurn(async () => {
    for (let attempt = 1; ; attempt++) {
      const subject = await subjectOf(deps, origin, code)
      await refuseOtherBasis(deps, subject, code, options.basedOn)
      const wanted = intend(subject)
      if (wanted) check(deps, subject, wanted, options)
      const category = wanted?.category ?? null
      if (subject.own && category && categoryChange(subject.own, category) === null)
        return edited(subject.overlay.changedIn.get(code)!, subject.overlay.revision, category, null)
      const action = actionOf(subject.own, category)
      const edit = { action, code, category, origin, reason: options.reason, at: deps.clock() }
      const revision = await append(deps, subject.overlay.revision, edit, attempt)
      if (revision === null) continue
      await deps.overlayMemory.refresh()
      return edited(revision.number, revision.number, category, revision)
    }
  })
}

async function subjectOf(deps: Deps, { caller }: Origin, code: string): Promise<OverlaySubject> {
  await Promise.all([deps.overlayMemory.refresh(), deps.catalogueMemory.refresh()])
  const overlay = await deps.overlayMemory.current(caller.organisation)
  const shared = deps.catalogueMemory.current().categories.get(code)
  return { overlay, own: overlay.categories.get(code), shared }
}

function check(
  { catalogueMemory, overlayMemory }: Deps,
  { overlay, own, shared }: OverlaySubject,
  { category, faults = [] }: Intended,
  { confirm }: EditOptions,
): void {
  const seen = overlayMemory.over(catalogueMemory.current(), overlay)
  checkEdit(seen, category, { confirm, faults: [...faults, ...overlayFaults(category, shared)] })
  if (own === undefined && overlay.categories.size >= MOST_CATEGORIES)
    throw new DomainError(
      'overlay-full',
      `An organisation can lay ${MOST_CATEGORIES} categories over the shared catalogue, and has done so. Remove some first.`,
    )
}

const actionOf = (before: Category | undefined, after: Category | null): OverlayAction => {
  if (after === null) return 'remove'
  return before === undefined ? 'lay' : 'change'
}

const edited = (
  changedIn: number,
  overlayRevision: number,
  category: Category | null,
  revision: OverlayRevision | null,
): EditedOverlay => ({
  own: category && labelled(category, 'organisation'),
  changedIn,
  overlayRevision,
  revision,
})

/** Null where another process stored a revision first, and it is worth trying again. */
async function append(
  { overlayStore }: Deps,
  ...[basedOn, edit, attempt]: [...Parameters<Deps['overlayStore']['append']>, number]
): Promise<OverlayRevision | null> {
  try {
    return await overlayStore.append(basedOn, edit)
  } catch (error) {
    if (!(error instanceof DomainError) || error.code !== 'stale-overlay') throw error
    if (attempt < ATTEMPTS) return null
    throw new Error(`An edit came too late ${ATTEMPTS} times in a row.`, { cause: error })
  }
}
