/** Which part of an ordered list is asked for. */
export interface Window<Place> {
  /** Only what comes after this place, and before that one; what stands there is left out. */
  readonly after?: Place | undefined
  readonly before?: Place | undefined
  readonly limit: number
  /** Which end of what lies between stays, where it is longer than `limit`. */
  readonly keep: 'first' | 'last'
}
