import { MODES } from '../catalogue/category.ts'
import type { ProposalPlace } from './proposalPlace.ts'

/** The order of proposals: by category, mode and first year of manufacture. */
export function comparePlaces(one: ProposalPlace, other: ProposalPlace): number {
  if (one.category !== other.category) return one.category < other.category ? -1 : 1
  const byMode = MODES.indexOf(one.mode) - MODES.indexOf(other.mode)
  if (byMode !== 0) return byMode
  const [year, otherYear] = [one.yearFrom ?? -Infinity, other.yearFrom ?? -Infinity]
  return year === otherYear ? 0 : year < otherYear ? -1 : 1
}
