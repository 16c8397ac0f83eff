import { comparePlaces } from '../core/proposals/comparePlaces.ts'
import type { Proposal } from '../core/proposals/proposal.ts'
import type { ProposalPlace } from '../core/proposals/proposalPlace.ts'
import type { Window } from '../stores/window.ts'
import { authorizeOperator, type Sender } from './authorize.ts'
import { categoryProposals, namesInUse } from './categoryProposals.ts'
import { catalogueOf } from './catalogueOf.ts'
import type { Deps } from './deps.ts'
import type { Part } from './part.ts'

export type { Proposal } from '../core/proposals/proposal.ts'
export type { ProposalPlace } from '../core/proposals/proposalPlace.ts'

export interface ProposalFilter {
  /** Whether those are shown, too, that were answered and wait for more readings. */
  readonly includeAnswered: boolean
}

/**
 * Proposals for the catalogue's figures from the readings of all organisations, in the order of categories, modes and years. They
 * are worked out anew, category by category, until the window is full.
 * @throws DomainError key-required, scope-missing, operator-only
 */
export async function listProposals(
  deps: Deps,
  sender: Sender,
  { includeAnswered }: ProposalFilter,
  { after, before, limit, keep }: Window<ProposalPlace>,
): Promise<Part<Proposal>> {
  authorizeOperator(sender, 'catalogue:edit')
  const catalogue = await catalogueOf(deps, undefined)
  const names = await namesInUse(deps, catalogue)
  const isWithin = (place: ProposalPlace) =>
    (!after || comparePlaces(place, after) > 0) && (!before || comparePlaces(place, before) < 0)
  const found: Proposal[] = []
  for (const code of inOrder(names.keys(), keep)) {
    if ((after && code < after.category) || (before && code > before.category)) continue
    const all = await categoryProposals(deps, catalogue, code, names.get(code)!)
    const shown = all.filter((one) => isWithin(one) && (includeAnswered || one.status === 'open'))
    if (keep === 'first') found.push(...shown)
    else found.unshift(...shown)
    if (found.length > limit) break
  }
  const isCut = found.length > limit
  return {
    items: keep === 'first' ? found.slice(0, limit) : found.slice(Math.max(0, found.length - limit)),
    hasBefore: after !== undefined || (keep === 'last' && isCut),
    hasAfter: before !== undefined || (keep === 'first' && isCut),
  }
}

const inOrder = (codes: Iterable<string>, keep: 'first' | 'last') => {
  const sorted = [...codes].sort((one, other) => (one < other ? -1 : 1))
  return keep === 'first' ? sorted : sorted.reverse()
}
