import type { ReferenceContents, ReferenceKind } from '../../core/reference/referenceEntry.ts'

/** A tariff or an emission factor as GraphQL hands it out: with the revision that gave it its state. */
export type ShownReference<K extends ReferenceKind> = ReferenceContents[K] & {
  readonly changedInRevision: number
}

/** @param found as useCases/readReference.ts and editReference.ts give it */
export const shownReference = <K extends ReferenceKind>({
  content,
  changedIn,
}: {
  readonly content: ReferenceContents[K]
  readonly changedIn: number
}): ShownReference<K> => ({ ...content, changedInRevision: changedIn })
