import type { NewAuditEvent } from '../../src/core/access/auditEvent.ts'
import { auditOfOverlay } from '../../src/core/catalogue/auditOfOverlay.ts'
import { type Overlay, overlayOf } from '../../src/core/catalogue/overlay.ts'
import type { OverlayRevisionChange } from '../../src/core/catalogue/overlayRevision.ts'
import { DomainError } from '../../src/core/fault.ts'
import type { OverlayStore } from '../../src/stores/overlayStore.ts'

/** Overlays in memory, for tests of what stands on a store. */
export function memoryOverlayStore(write: (event: NewAuditEvent) => void): OverlayStore {
  const histories = new Map<string, OverlayRevisionChange[]>()
  const historyOf = (organisation: string) => histories.get(organisation) ?? []
  const overlayAt = (organisation: string, revision: number): Overlay | null => {
    const history = historyOf(organisation)
    if (history[revision - 1] === undefined) return null
    const newest = new Map(history.slice(0, revision).map((change) => [change.code, change]))
    const states = [...newest.values()].map(({ code, after, number }) => ({
      code,
      category: after,
      revision: number,
    }))
    return overlayOf(organisation, revision, states)
  }
  return {
    latestRevisions: async () => new Map([...histories].map(([name, history]) => [name, history.length])),
    overlayAt: async (organisation, revision) => overlayAt(organisation, revision),
    revisions: async (organisation, oldest, newest) =>
      historyOf(organisation)
        .filter(({ number }) => number >= oldest && number <= newest)
        .reverse()
        .map(({ number, action, code, author, reason, at }) => ({
          number,
          action,
          code,
          author,
          reason,
          at,
        })),
    revision: async (organisation, number) => historyOf(organisation)[number - 1] ?? null,
    append: async (basedOn, edit) => {
      const { organisation, keyId } = edit.origin.caller
      const history = historyOf(organisation)
      if (basedOn !== history.length)
        throw new DomainError('stale-overlay', `Based on ${basedOn}, but the newest is ${history.length}.`)
      const before = overlayAt(organisation, basedOn)?.categories.get(edit.code) ?? null
      const number = basedOn + 1
      const { action, code, reason, at } = edit
      const revision = { number, action, code, author: { organisation, keyId }, reason, at }
      const after = structuredClone(edit.category)
      histories.set(organisation, [...history, { ...revision, before, after }])
      write(auditOfOverlay(edit, number, before))
      return revision
    },
  }
}
