import { categoryChange } from '../core/catalogue/categoryChange.ts'
import { labelled } from '../core/catalogue/labelledCategory.ts'
import { DomainError } from '../core/fault.ts'
import type { Deps } from './deps.ts'
import type { OverlaySubject } from './overlaySubject.ts'

/**
 * What an edit of an organisation's own category is based on: the overlay revisions that gave it the states that the editor
 * knows; `nothing` where there is to be none yet; null where the editor did not say.
 */
export type OverlayBasis = readonly number[] | 'nothing' | null

/**
 * Sees that an editor knows what there is to edit.
 * @throws DomainError precondition-required; already-there; stale-overlay, which shows what changed meanwhile
 */
export async function refuseOtherBasis(
  deps: Deps,
  subject: OverlaySubject,
  code: string,
  basedOn: OverlayBasis,
): Promise<void> {
  if (basedOn === null)
    throw new DomainError(
      'precondition-required',
      `Name the state of your organisation's ${code} that the edit is based on, or that there is none yet, so that nobody's edit is overwritten unseen.`,
    )
  const changedIn = subject.overlay.changedIn.get(code)
  if (basedOn === 'nothing') {
    if (changedIn === undefined) return
    throw new DomainError(
      'already-there',
      `Your organisation has a ${code} of its own already, and the request asks that there be none.`,
      { code },
    )
  }
  if (changedIn !== undefined && basedOn.includes(changedIn)) return
  throw await staleOverlay(deps, subject, code, basedOn[0])
}

async function staleOverlay(
  { overlayStore, overlayMemory }: Deps,
  { overlay: { organisation, changedIn }, own }: OverlaySubject,
  code: string,
  basedOn: number | undefined,
): Promise<DomainError> {
  const since = changedIn.get(code)
  if (own === undefined || since === undefined)
    return new DomainError(
      'stale-overlay',
      `Your organisation has no ${code} of its own, or no longer. Look at it, and begin from there.`,
      { changedIn: null, lastEdit: null, current: null, changes: null },
    )
  const [lastEdit] = await overlayStore.revisions(organisation, since, since)
  const known = basedOn === undefined ? null : await overlayMemory.at(organisation, basedOn)
  const before = known?.categories.get(code)
  return new DomainError(
    'stale-overlay',
    `Your organisation's ${code} was changed in its revision ${since} ("${lastEdit!.reason}"). Look at what changed, and edit the present state.`,
    {
      changedIn: since,
      lastEdit,
      current: labelled(own, 'organisation'),
      // Where the state that the editor names is not known, nobody can say what changed since.
      changes: before ? (categoryChange(before, own)?.fields ?? []) : null,
    },
  )
}
