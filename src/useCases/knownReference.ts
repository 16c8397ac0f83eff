import { entryAt, referenceChange } from '../core/reference/referenceChange.ts'
import type { ReferenceData } from '../core/reference/referenceData.ts'
import type { ReferenceContents, ReferenceEntry, ReferenceKind } from '../core/reference/referenceEntry.ts'
import type { Deps } from './deps.ts'
import { entryIn } from './readReference.ts'
import { requireKnownState } from './requireKnownState.ts'

/**
 * The entry that an editor wants to change, where the editor knows its present state.
 * @throws DomainError unknown-tariff or unknown-emission-factor; precondition-required; stale-tariff or
 *   stale-emission-factor, which show what changed meanwhile
 */
export async function knownReference<K extends ReferenceKind>(
  { referenceStore, referenceMemory }: Deps,
  newest: ReferenceData,
  kind: K,
  code: string,
  basedOn: readonly number[] | null,
): Promise<ReferenceContents[K]> {
  const current = entryIn(newest, kind, code)
  const subject = {
    code,
    staleCode: `stale-${kind}`,
    changedIn: newest.changedIn[kind].get(code)!,
    current,
    revisions: (oldest: number, upTo: number) => referenceStore.revisions(oldest, upTo),
    changesSince: async (revision: number) => {
      const past = await referenceMemory.at(revision)
      const before = past && entryAt(past, kind, code)
      if (before === null) return null
      return referenceChange(before, { kind, content: current } as ReferenceEntry)?.fields ?? []
    },
  }
  await requireKnownState(subject, basedOn)
  return current
}
