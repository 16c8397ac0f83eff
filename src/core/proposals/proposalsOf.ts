import { type Category, MODES } from '../catalogue/category.ts'
import { samePlace } from './samePlace.ts'
import type { Proposal } from './proposal.ts'
import { propose } from './propose.ts'
import type { ReadDevice } from './readDevice.ts'
import type { Rejection } from './rejection.ts'

/**
 * What the readings of a category say of each of its typical draws, in the order of modes and years. A mode that the category does
 * not have gets no proposal: its hours would have to be made up.
 * @param rejections of the category, oldest first
 */
export function proposalsOf(
  subject: { readonly category: Category; readonly changedIn: number },
  readings: readonly ReadDevice[],
  rejections: readonly Rejection[],
): Proposal[] {
  const { code, modes } = subject.category
  const inOrder = modes.toSorted((one, other) => MODES.indexOf(one.mode) - MODES.indexOf(other.mode))
  return inOrder.flatMap((mode) =>
    mode.draws
      .toSorted((one, other) => (one.yearFrom ?? -Infinity) - (other.yearFrom ?? -Infinity))
      .flatMap((draw) => {
        const place = { category: code, mode: mode.mode, yearFrom: draw.yearFrom, yearTo: draw.yearTo }
        const last = rejections.findLast((rejection) => samePlace(rejection, place)) ?? null
        return propose(subject, mode, draw, readings, last) ?? []
      }),
  )
}
