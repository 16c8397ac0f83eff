/**
 * A request that must have its effect once, however often it is sent (draft-ietf-httpapi-idempotency-key-header-07).
 *
 * The first one's result is kept in the same transaction as its effect, and given again to whoever sends the same key with
 * the same request. Another request with the same key is refused with DomainError `idempotency-key-reused`, and one that
 * comes while the first is under way with `idempotency-key-busy`. Keys are an organisation's own, and are forgotten after
 * RESULT_KEPT_HOURS.
 */
export interface Once {
  readonly key: string
  /** SHA-256 of what was asked for. */
  readonly digest: Uint8Array
  readonly at: Date
}

export interface OnceResult<T> {
  readonly result: T
  /** Whether it was kept from an earlier request. */
  readonly replayed: boolean
}
