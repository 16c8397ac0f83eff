import { type CategoryChange, categoryChange } from '../core/catalogue/categoryChange.ts'
import type { Revision } from '../core/catalogue/revision.ts'
import type { CategoryBeforeAfter } from '../stores/catalogueStore.ts'
import type { Window } from '../stores/window.ts'
import type { Deps } from './deps.ts'
import { type Part, partOf } from './part.ts'
import { unknownRevision } from './unknownRevision.ts'

/** What a revision says of itself. @throws DomainError unknown-revision */
export async function readRevision(
  { catalogueStore, catalogueMemory }: Deps,
  number: number,
): Promise<Revision> {
  const [revision] = await catalogueStore.revisions(number, number)
  if (revision) return revision
  throw unknownRevision(number, catalogueMemory.current().revision)
}

/** What a revision changed, or a part of it, in the order of the codes. */
export async function readRevisionChanges(
  { catalogueStore }: Deps,
  number: number,
  window: Window<string>,
): Promise<Part<CategoryChange>> {
  return partOf(window, async (wider) => (await catalogueStore.changesIn(number, wider)).map(changeOf))
}

/** What a revision changed of one category; null where that is nothing. */
export async function readRevisionChange(
  deps: Deps,
  number: number,
  code: string,
): Promise<CategoryChange | null> {
  // Codes hold no character below the hyphen: of those before `code!`, the last is the code itself or it is not there.
  const window = { before: `${code}!`, limit: 1, keep: 'last' } as const
  const [last] = (await readRevisionChanges(deps, number, window)).items
  return last?.code === code ? last : null
}

/** How many categories a revision changed. */
export const countRevisionChanges = ({ catalogueStore }: Deps, number: number) =>
  catalogueStore.countChangesIn(number)

/** A state that was stored although it is like the one before is shown, too. */
const changeOf = ({ before, after }: CategoryBeforeAfter): CategoryChange =>
  categoryChange(before, after) ?? { code: after.code, kind: 'changed', before, after, fields: [] }
