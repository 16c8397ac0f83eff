import type { Fault } from '../fault.ts'
import type { Category } from './category.ts'
import { plainName } from './findCategory.ts'

/**
 * Rules of a category's aliases, compared as look-up compares them (plainName): each says something, is said once,
 * and does not repeat the category's own code or name.
 */
export function checkAliases(category: Pick<Category, 'code' | 'name' | 'aliases'>, base: string): Fault[] {
  const own = new Set([plainName(category.code), plainName(category.name)])
  const seen = new Set<string>()
  return category.aliases.flatMap((alias, index) => {
    const plain = plainName(alias)
    const fault = (code: string, message: string): Fault[] => [{ pointer: `${base}/${index}`, code, message }]
    if (plain === '')
      return fault('alias-empty', `The alias "${alias}" has no letter or digit to be found by.`)
    if (own.has(plain))
      return fault('alias-repeats-name', `The alias "${alias}" repeats the code or the name; remove it.`)
    if (seen.has(plain))
      return fault('alias-repeated', `The alias "${alias}" is in the list already; remove it.`)
    seen.add(plain)
    return []
  })
}
