import type { Author } from '../catalogue/revision.ts'
import type { ProposalPlace } from './proposalPlace.ts'

/** That an editor turned a proposal down. */
export interface Rejection extends ProposalPlace {
  /** The proposal's version, and what it was like. */
  readonly version: string
  readonly n: number
  readonly lowW: number
  readonly typicalW: number
  readonly highW: number
  readonly author: Author
  readonly reason: string
  readonly at: Date
}
