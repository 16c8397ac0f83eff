import type { Category, TypicalDraw } from '../catalogue/category.ts'
import type { Proposal } from './proposal.ts'

/** The category with a proposal's figures in the place of today's, as a figure of a programme that says how many readings it has. */
export function acceptedCategory(category: Category, proposal: Proposal): Category {
  const { mode, yearFrom, yearTo, low, typical, high, n } = proposal
  const accepted: TypicalDraw = {
    yearFrom,
    yearTo,
    lowW: low.proposedW,
    typicalW: typical.proposedW,
    highW: high.proposedW,
    provenance: { kind: 'programme', citation: null, n },
  }
  const isMeant = (draw: TypicalDraw) => draw.yearFrom === yearFrom && draw.yearTo === yearTo
  return {
    ...category,
    modes: category.modes.map((one) =>
      one.mode === mode ? { ...one, draws: one.draws.map((draw) => (isMeant(draw) ? accepted : draw)) } : one,
    ),
  }
}
