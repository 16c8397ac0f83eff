import { distance } from 'fastest-levenshtein'
import type { Catalogue } from './catalogue.ts'
import type { Category } from './category.ts'
import { layerOf } from './layerOf.ts'

type Index = ReadonlyMap<string, Category>
const indexes = new WeakMap<Catalogue, Index>()

/** A name as people type it and as a code spells it come out the same: "TV set", "tv-set" and " TV  Set ". */
export function plainName(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
}

/**
 * Every name that a category answers to. Where two categories share one, codes win over names, and names over aliases; but
 * the names of a category in use win over those of a retired one, which going back to an old revision may leave shared. An
 * organisation's own categories come first among names and among aliases: the shared catalogue may have got the name later.
 */
function indexOf(catalogue: Catalogue): Index {
  const known = indexes.get(catalogue)
  if (known) return known
  const index = new Map<string, Category>()
  const isOwn = ({ code }: Category) => layerOf(catalogue, code) === 'organisation'
  const all = [...catalogue.categories.values()]
  const categories = [...all.filter(isOwn), ...all.filter((category) => !isOwn(category))]
  const add = (name: string, category: Category) => {
    const key = plainName(name)
    if (!index.has(key)) index.set(key, category)
  }
  for (const category of categories) add(category.code, category)
  for (const group of [
    categories.filter(({ retired }) => !retired),
    categories.filter(({ retired }) => retired),
  ]) {
    for (const category of group) add(category.name, category)
    for (const category of group) for (const alias of category.aliases) add(alias, category)
  }
  indexes.set(catalogue, index)
  return index
}

/** The category that goes by this code, name or alias, whatever its case, accents and punctuation; else null. */
export function findCategory(catalogue: Catalogue, name: string): Category | null {
  return catalogue.categories.get(name) ?? indexOf(catalogue).get(plainName(name)) ?? null
}

/**
 * The categories whose code, name or an alias is closest to what was typed, closest first, for "did you mean".
 * Closeness is the Levenshtein distance over the longer length; a name that contains the typed one, or is
 * contained in it, as whole words counts as half as far.
 */
export function nearestCategories(catalogue: Catalogue, name: string, count = 3): Category[] {
  const typed = plainName(name).slice(0, 120)
  const best = new Map<Category, number>()
  for (const [known, category] of indexOf(catalogue)) {
    if (category.retired) continue
    const far = distance(typed, known) / Math.max(typed.length, known.length, 1)
    const contained = ` ${known} `.includes(` ${typed} `) || ` ${typed} `.includes(` ${known} `)
    const score = contained ? far / 2 : far
    if (score < (best.get(category) ?? Infinity)) best.set(category, score)
  }
  return [...best]
    .sort(([a, scoreA], [b, scoreB]) => scoreA - scoreB || (a.code < b.code ? -1 : 1))
    .slice(0, count)
    .map(([category]) => category)
}
