import { type Catalogue, catalogueOf } from './catalogue.ts'
import type { Category } from './category.ts'
import type { Overlay } from './overlay.ts'

/**
 * The shared catalogue as an organisation sees it: its own categories in place of the shared ones of the same code, and
 * beside the others. Its revision is that of the shared one. What the shared catalogue says must stay powered stays so,
 * whatever the overlay says: that keeps food, health and lives safe, and came perhaps later than the overlay.
 */
export function layeredCatalogue(shared: Catalogue, overlay: Overlay): Catalogue {
  if (overlay.revision === 0) return shared
  const categories = new Map(shared.categories)
  const changedIn = new Map(shared.changedIn)
  for (const [code, own] of overlay.categories) {
    categories.set(code, keptPowered(own, shared.categories.get(code)))
    changedIn.set(code, overlay.changedIn.get(code)!)
  }
  return { ...catalogueOf(shared.revision, categories.values(), changedIn), overlay }
}

const keptPowered = (own: Category, shared: Category | undefined): Category =>
  own.keepPowered === null && shared?.keepPowered ? { ...own, keepPowered: shared.keepPowered } : own
