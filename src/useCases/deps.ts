import type { StoredKey } from '../core/access/apiKey.ts'
import type { Catalogue } from '../core/catalogue/catalogue.ts'
import type { Overlay } from '../core/catalogue/overlay.ts'
import type { Estimate } from '../core/estimate/estimate.ts'
import type { OperatorSettings } from '../core/estimate/settings.ts'
import type { QuizLanguages } from '../core/quiz/quizLanguage.ts'
import type { ReferenceData } from '../core/reference/referenceData.ts'
import type { AuditStore } from '../stores/auditStore.ts'
import type { CatalogueStore } from '../stores/catalogueStore.ts'
import type { InventoryStore } from '../stores/inventoryStore.ts'
import type { KeyStore } from '../stores/keyStore.ts'
import type { OverlayStore } from '../stores/overlayStore.ts'
import type { ProposalStore } from '../stores/proposalStore.ts'
import type { ReferenceStore } from '../stores/referenceStore.ts'
import type { RevisionMemory } from './revisionMemory.ts'

/** The catalogue as it is held in memory, so that no estimate waits for the database. */
export type CatalogueMemory = RevisionMemory<Catalogue>

/** What organisations have laid over the shared catalogue, as it is held in memory. */
export interface OverlayMemory {
  /** The newest overlay of an organisation that this process has seen; at revision 0 where it never had one. */
  current(organisation: string): Promise<Overlay>
  /** A past revision, read from the store once and kept; revision 0 is the empty overlay. Null where there is none. */
  at(organisation: string, revision: number): Promise<Overlay | null>
  /** The shared catalogue with an overlay over it; the same one for the same two, as long as it is kept. */
  over(shared: Catalogue, overlay: Overlay): Catalogue
  /** Looks at the store now, and takes over what is newer. */
  refresh(): Promise<void>
  /** Does one edit of this process after the other, so that they don't make each other stale. */
  inTurn<T>(edit: () => Promise<T>): Promise<T>
}

/** Keys as they were looked up a moment ago, so that a caller that sends much is not looked up each time. */
export interface KeyMemory {
  find(id: string): Promise<StoredKey | null>
  /** The valid key of the operator's setting. */
  bootstrapKey(): Promise<StoredKey | null>
  /** Whether a valid publishable key is for the origin. */
  isOrigin(origin: string): Promise<boolean>
  /** Looks the key up again when it is next asked for: it was changed just now. */
  forget(id: string): void
  /** Keeps that a key was used, later and beside the request. */
  noteUse(id: string, at: Date): void
  /** Done when nothing is being stored any more. */
  settled(): Promise<void>
}

/** Digests of secrets; see persistence/digests.ts. */
export interface Digests {
  of(text: string): Uint8Array
  equal(one: Uint8Array, other: Uint8Array): boolean
}

/** What use cases are given; nothing in them reaches for anything else. */
export interface Deps {
  readonly catalogueStore: CatalogueStore
  readonly catalogueMemory: CatalogueMemory
  readonly overlayStore: OverlayStore
  readonly overlayMemory: OverlayMemory
  /** What the operator set; settingsAt adds the tariffs and emission factors of a revision, as sums need them. */
  readonly settings: OperatorSettings
  readonly referenceStore: ReferenceStore
  readonly referenceMemory: RevisionMemory<ReferenceData>
  readonly quizLanguages: QuizLanguages
  readonly clock: () => Date
  /** Hears of every estimate that is made, by the flag of its total; missing where nobody counts them. */
  readonly onEstimate?: ((confidence: Estimate['total']['confidence']) => void) | undefined
  readonly keyStore: KeyStore
  readonly keyMemory: KeyMemory
  readonly auditStore: AuditStore
  readonly inventoryStore: InventoryStore
  readonly proposalStore: ProposalStore
  /** That many unpredictable bytes. */
  readonly random: (bytes: number) => Uint8Array
  readonly digests: Digests
}
