import type { AuditEvent, NewAuditEvent } from '../../src/core/access/auditEvent.ts'
import type { AuditFilter, AuditStore } from '../../src/stores/auditStore.ts'

/** An audit trail in memory, for tests, and what the stores that write into it are given. */
export interface MemoryAuditStore extends AuditStore {
  readonly write: (event: NewAuditEvent) => void
}

export function memoryAuditStore(): MemoryAuditStore {
  const oldestFirst: AuditEvent[] = []
  const matching = (filter: AuditFilter) => oldestFirst.toReversed().filter((event) => matches(event, filter))
  return {
    write: (event) => {
      oldestFirst.push(eventOf(event, oldestFirst.length + 1))
    },
    find: async (id) => oldestFirst.find((event) => event.id === id) ?? null,
    list: async (filter, { after, before, limit, keep }) => {
      const between = matching(filter).filter(
        ({ id }) =>
          (after === undefined || Number(id) < Number(after)) &&
          (before === undefined || Number(id) > Number(before)),
      )
      return keep === 'first' ? between.slice(0, limit) : between.slice(Math.max(between.length - limit, 0))
    },
    count: async (filter) => matching(filter).length,
  }
}

const eventOf = (
  { origin, before, after, concerns, ...rest }: NewAuditEvent,
  number: number,
): AuditEvent => ({
  ...rest,
  id: String(number),
  organisation: origin?.caller.organisation ?? null,
  keyId: origin?.caller.keyId ?? null,
  requestId: origin?.requestId ?? null,
  concerns: concerns ?? origin?.caller.organisation ?? null,
  before: asJson(before),
  after: asJson(after),
})

const asJson = (value: unknown): unknown => JSON.parse(JSON.stringify(value ?? null))

function matches(event: AuditEvent, { organisation, action, subjectKind, subjectId, from, to }: AuditFilter) {
  return (
    (organisation === undefined || event.concerns === organisation) &&
    (action === undefined || event.action === action) &&
    (subjectKind === undefined || event.subjectKind === subjectKind) &&
    (subjectId === undefined || event.subjectId === subjectId) &&
    (from === undefined || event.at >= from) &&
    (to === undefined || event.at < to)
  )
}
