import type { Catalogue } from './catalogue.ts'
import type { Category } from './category.ts'
import { type CategoryChange, categoryChange } from './categoryChange.ts'
import type { BadRow, ImportFile } from './importFile.ts'
import { type LargeChange, largeChanges } from './largeChanges.ts'
import { nameFaults, ownersOfNames } from './nameFaults.ts'

/** What an import would do to a catalogue. */
export interface ImportPlan {
  /** In the order of the codes. Categories that the file leaves as they are have none. */
  readonly changes: readonly CategoryChange[]
  readonly largeChanges: readonly (LargeChange & { readonly category: string })[]
  /** Names that the file gives to a category although another one has them; beside the bad rows of the file itself. */
  readonly badRows: readonly BadRow[]
}

/** @param retireMissing whether a category that the file does not speak of is to be retired */
export function planImport(catalogue: Catalogue, file: ImportFile, retireMissing: boolean): ImportPlan {
  const before = (code: string) => catalogue.categories.get(code) ?? null
  const missing = retireMissing
    ? [...catalogue.categories.values()].filter(({ code }) => !file.codes.has(code))
    : []
  const wanted = [...file.categories, ...missing.map((category) => ({ ...category, retired: true }))]
  const changes = wanted.flatMap((after) => categoryChange(before(after.code), after) ?? []).sort(byCode)
  const result = new Map<string, Category>(catalogue.categories)
  for (const { code, after } of changes) result.set(code, after)
  const owners = ownersOfNames(result.values())
  return {
    changes,
    largeChanges: changes.flatMap((change) =>
      change.before === null
        ? []
        : largeChanges(change.before, change.after).map((large) => ({ category: change.code, ...large })),
    ),
    badRows: changes.flatMap((change) =>
      nameFaults(change.before, change.after, owners).map((fault) => file.place(change.code, fault)),
    ),
  }
}

const byCode = (a: CategoryChange, b: CategoryChange) => (a.code < b.code ? -1 : 1)
