import type { Revision, RevisionAction } from '../core/catalogue/revision.ts'
import { type Fault, FaultyInput } from '../core/fault.ts'
import { entryAt, referenceChange } from '../core/reference/referenceChange.ts'
import type { ReferenceData } from '../core/reference/referenceData.ts'
import type {
  EntryOf,
  ReferenceContents,
  ReferenceEntry,
  ReferenceKind,
} from '../core/reference/referenceEntry.ts'
import { referenceFaults } from '../core/reference/referenceFaults.ts'
import { authorizeOperator, type Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { storeEdit } from './storeEdit.ts'

/** What every edit of a tariff or an emission factor says. */
export interface ReferenceEditOptions {
  /** Why; kept with the revision. */
  readonly reason: string
}

/** What an edit of one that exists says. */
export interface ReferenceChangeOptions extends ReferenceEditOptions {
  /** As ChangeOptions.basedOn of a category. */
  readonly basedOn: readonly number[] | null
}

export interface EditedReference<K extends ReferenceKind> extends EntryOf<K> {
  /** The revision that gave it its present state. */
  readonly changedIn: number
  readonly referenceRevision: number
  /** The revision that the edit made; null where nothing changed. */
  readonly revision: Revision | null
}

/** An entry as it is to become, and faults of the shape in which it was sent. */
interface Intended<K extends ReferenceKind> {
  readonly content: ReferenceContents[K]
  readonly faults?: readonly Fault[]
}

/**
 * The one way by which a tariff or an emission factor is edited: the caller's scope, the rules of the trade, one revision.
 * @param intend what the entry is to become, given the newest state
 * @throws DomainError key-required, scope-missing, operator-only; FaultyInput; whatever `intend` throws
 */
export async function editReference<K extends ReferenceKind>(
  { referenceMemory, referenceStore, clock }: Deps,
  sender: Sender,
  kind: K,
  { action, reason }: ReferenceEditOptions & { readonly action: RevisionAction },
  intend: (newest: ReferenceData) => Promise<Intended<K>> | Intended<K>,
): Promise<EditedReference<K>> {
  const origin = authorizeOperator(sender, 'catalogue:edit')
  let result: { content: ReferenceContents[K]; changedIn: number } | undefined
  const target = { memory: referenceMemory, store: referenceStore, clock }
  const { revision, newest: referenceRevision } = await storeEdit<ReferenceData, ReferenceEntry>(target, {
    action,
    origin,
    reason,
    decide: async (newest) => {
      const { content, faults = [] } = await intend(newest)
      const entry = { kind, content } as ReferenceEntry
      const { code } = entry.content
      // What only goes out of sight need not follow rules that came after it.
      const all = action === 'retire' ? [] : [...faults, ...referenceFaults(newest, entry)]
      if (all.length > 0) throw new FaultyInput(all)
      result = { content, changedIn: newest.changedIn[kind].get(code) ?? 0 }
      return referenceChange(entryAt(newest, kind, code), entry) === null ? [] : [entry]
    },
  })
  const { content, changedIn } = result!
  return { kind, content, changedIn: revision?.number ?? changedIn, referenceRevision, revision }
}
