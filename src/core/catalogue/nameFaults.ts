import type { Fault } from '../fault.ts'
import type { Category } from './category.ts'
import { plainName } from './findCategory.ts'

type Names = ReadonlyMap<string, readonly string[]>

/** One name of a category as look-up compares it, and where in the category it stands. */
interface OwnName {
  readonly plain: string
  readonly written: string
  readonly pointer: string
}

const known = new WeakMap<Category, readonly OwnName[]>()

/** The names of a category. Kept with it, since every edit looks at those of the whole catalogue. */
function namesOf(category: Category): readonly OwnName[] {
  const kept = known.get(category)
  if (kept) return kept
  const { code, name, aliases } = category
  const names = [
    { written: code, pointer: '/code' },
    { written: name, pointer: '/name' },
    ...aliases.map((alias, index) => ({ written: alias, pointer: `/aliases/${index}` })),
  ].map((own) => ({ ...own, plain: plainName(own.written) }))
  known.set(category, names)
  return names
}

/** By name as look-up compares it: the codes of the categories that answer to it, retired ones too. */
export function ownersOfNames(categories: Iterable<Category>): Names {
  const owners = new Map<string, string[]>()
  for (const category of categories)
    for (const { plain } of namesOf(category)) {
      const codes = owners.get(plain)
      if (!codes) owners.set(plain, [category.code])
      else if (codes.at(-1) !== category.code) codes.push(category.code)
    }
  return owners
}

/**
 * The names that an edit gives to a category although another one answers to them already, so that one of the two could no
 * longer be found. A retired category keeps its names, since old inventories speak of it by them. Names that the category
 * had before are not looked at again, but those of one that comes back from retirement are.
 * @param owners of the names of the whole catalogue as it would become
 */
export function nameFaults(before: Category | null, after: Category, owners: Names): Fault[] {
  const keeps = before !== null && (after.retired || !before.retired)
  const had = new Set(keeps ? namesOf(before).map(({ plain }) => plain) : [])
  return namesOf(after).flatMap(({ plain, written, pointer }) => {
    const other = had.has(plain) ? undefined : owners.get(plain)?.find((code) => code !== after.code)
    if (other === undefined) return []
    const message = `"${written}" is a name of the category ${other} already; one name, one category.`
    return [{ pointer, code: 'name-taken', message }]
  })
}
