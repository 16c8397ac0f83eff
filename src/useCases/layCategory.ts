import { type CategoryContent, categoryFrom, fixedFieldFaults } from '../core/catalogue/categoryContent.ts'
import { FaultyInput, type Submitted } from '../core/fault.ts'
import type { Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { type EditedOverlay, editOverlay, type OverlayOptions } from './editOverlay.ts'
import type { Intended } from './editCategory.ts'
import type { OverlaySubject } from './overlaySubject.ts'

/**
 * Lays a whole category over the shared catalogue, for the callers of the caller's organisation alone: in the place of the
 * shared one, or under a code that the shared catalogue lacks; or gives the organisation's own category new content.
 * A retired one stays out of the organisation's lists.
 * @throws DomainError and FaultyInput as editOverlay
 */
export const layCategory = (
  deps: Deps,
  sender: Sender,
  code: string,
  submitted: Submitted<CategoryContent>,
  options: OverlayOptions,
): Promise<EditedOverlay> =>
  editOverlay(deps, sender, code, options, (subject) => ownCategory(code, submitted, subject))

/** @throws FaultyInput where the shape does not hold */
export function ownCategory(
  code: string,
  { value, faults }: Submitted<CategoryContent>,
  { own, shared }: OverlaySubject,
): Intended {
  if (value === null) throw new FaultyInput(faults)
  const retired = value.retired ?? (own ?? shared)?.retired ?? false
  return {
    category: categoryFrom({ ...value, code }, retired),
    faults: [...faults, ...fixedFieldFaults(value, code, retired)],
  }
}
