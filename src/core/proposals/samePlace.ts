import type { ProposalPlace } from './proposalPlace.ts'

/** Whether both speak of the same typical draw. */
export const samePlace = (one: ProposalPlace, other: ProposalPlace): boolean =>
  one.category === other.category &&
  one.mode === other.mode &&
  one.yearFrom === other.yearFrom &&
  one.yearTo === other.yearTo
