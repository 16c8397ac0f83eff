import type { Category } from '../core/catalogue/category.ts'
import { categoryFrom } from '../core/catalogue/categoryContent.ts'
import { checkCategory } from '../core/catalogue/checkCategory.ts'
import type { ImportFile } from '../core/catalogue/importFile.ts'
import type { Fault } from '../core/fault.ts'
import { importedCategorySchema } from './catalogueEdit.ts'
import { listed, rowOfJson, unreadFile } from './categoryImportFault.ts'
import { readShape } from './readShape.ts'

/** A list beyond this is no catalogue, and takes long to check. */
const MOST_CATEGORIES = 20_000

/** Reads a list of categories for an import. */
export function readJsonImport(list: unknown): ImportFile {
  const refusal = refusalOf(list)
  if (refusal) return unreadFile(rowOfJson(refusal))
  const members = list as readonly unknown[]
  const places = new Map<string, number>()
  const read = members.map((raw, index) => readMember(raw, index, places))
  return {
    recognised: null,
    rows: members.length,
    categories: read.flatMap(({ category }) => category ?? []),
    codes: new Set(places.keys()),
    ...listed(read.flatMap(({ faults }) => faults).map(rowOfJson)),
    place: (code, fault) => rowOfJson(faultIn(places.get(code) ?? 0, fault)),
  }
}

function refusalOf(list: unknown): Fault | null {
  const fault = (code: string, message: string): Fault => ({ pointer: '', code, message })
  if (!Array.isArray(list)) return fault('invalid-type', 'The body must be a list of categories.')
  return list.length > MOST_CATEGORIES
    ? fault('too-big', `The list must have at most ${MOST_CATEGORIES} categories, but it has ${list.length}.`)
    : null
}

/** @param places by code, the member that has it; this one is added */
function readMember(
  raw: unknown,
  index: number,
  places: Map<string, number>,
): { readonly category: Category | null; readonly faults: readonly Fault[] } {
  const shape = readShape(importedCategorySchema, raw)
  const category = shape.value && categoryFrom(shape.value, shape.value.retired)
  const { code } = Object(raw) as { readonly code?: unknown }
  const faults = [...shape.faults, ...(category ? checkCategory(category) : [])]
  if (typeof code === 'string') {
    const earlier = places.get(code)
    if (earlier === undefined) places.set(code, index)
    else faults.push(repeated(code, earlier))
  }
  return {
    category: faults.length === 0 ? category : null,
    faults: faults.map((fault) => faultIn(index, fault)),
  }
}

const faultIn = (index: number, fault: Fault): Fault => ({ ...fault, pointer: `/${index}${fault.pointer}` })

const repeated = (code: string, earlier: number): Fault => ({
  pointer: '/code',
  code: 'code-repeated',
  message: `The code "${code}" is that of /${earlier} already.`,
})
