import type { ApiKey } from './apiKey.ts'

const HOUR_MS = 3_600_000
/** How long a key stays valid beside its successor: a day unless something else is said, and thirty days at most. */
export const OVERLAP_HOURS = { default: 24, max: 720 } as const

/** What is said of a rotation. */
export interface Rotation {
  /** h */
  readonly overlapHours: number
  /** When the successor expires; where nothing is said, it gets the term that its predecessor was issued with. */
  readonly expiresAt?: Date | undefined
}

export const endOfOverlap = ({ overlapHours }: Rotation, now: Date) =>
  new Date(now.getTime() + overlapHours * HOUR_MS)

/** When a successor expires; null is never. */
export function expiryOfSuccessor(
  { issuedAt, expiresAt }: ApiKey,
  rotation: Rotation,
  now: Date,
): Date | null {
  if (rotation.expiresAt !== undefined) return rotation.expiresAt
  return expiresAt && new Date(now.getTime() + expiresAt.getTime() - issuedAt.getTime())
}
