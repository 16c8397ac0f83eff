import type { Catalogue } from '../core/catalogue/catalogue.ts'
import type { EstimateSettings } from '../core/estimate/settings.ts'
import type { CatalogueStore } from '../stores/catalogueStore.ts'

/** The catalogue as it is held in memory, so that no estimate waits for the database. */
export interface CatalogueMemory {
  /** The newest revision that this process has seen. */
  current(): Catalogue
  /** A past revision; read from the store once and kept. Null where there is none. */
  at(revision: number): Promise<Catalogue | null>
  /** Looks at the store now, and takes over a newer revision. */
  refresh(): Promise<void>
}

/** What use cases are given; nothing in them reaches for anything else. */
export interface Deps {
  readonly catalogueStore: CatalogueStore
  readonly catalogueMemory: CatalogueMemory
  readonly settings: EstimateSettings
  readonly clock: () => Date
}
