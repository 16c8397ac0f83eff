import { DomainError } from '../core/fault.ts'
import { authorize, type Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { type EditedOverlay, editOverlay, type OverlayOptions } from './editOverlay.ts'

/**
 * Takes an organisation's own category away, as one new revision: the shared figure is back at once, where there is one.
 * Nothing is lost, since estimates can name the overlay revision before.
 * @throws DomainError unknown-overlay-category, and what editOverlay throws
 */
export async function removeFromOverlay(
  deps: Deps,
  sender: Sender,
  code: string,
  options: Pick<OverlayOptions, 'reason'> & { readonly basedOn: readonly number[] | null },
): Promise<EditedOverlay> {
  const { caller } = authorize(sender, 'catalogue:edit')
  await deps.overlayMemory.refresh()
  const { categories } = await deps.overlayMemory.current(caller.organisation)
  if (!categories.has(code)) throw unknownOverlayCategory(code)
  return editOverlay(deps, sender, code, { ...options, confirm: true }, () => null)
}

export const unknownOverlayCategory = (code: string) =>
  new DomainError(
    'unknown-overlay-category',
    `Your organisation has laid no category with the code "${code}" over the shared catalogue.`,
  )
