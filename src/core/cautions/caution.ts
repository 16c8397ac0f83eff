/** A safety statement that goes wherever the work it speaks of is suggested. */
export interface Caution {
  readonly code: string
  readonly message: string
  readonly source: string
}
