import type { Category, CategoryMode, Provenance, Range, TypicalDraw } from '../core/catalogue/category.ts'
import type { Prisma } from './generated/client.ts'

/** Reads one value that came out of a JSON column; `where` names it in an error. */
type Reader<T> = (value: unknown, where: string) => T

const plain =
  <T>(type: 'string' | 'number' | 'boolean'): Reader<T> =>
  (value, where) => {
    if (typeof value === type) return value as T
    throw new Error(`${where} is not a ${type} but ${JSON.stringify(value)}`)
  }
const text = plain<string>('string')
const number = plain<number>('number')
/** A word of a fixed list. The list is not looked at: a word that was dropped since must not make history unreadable. */
const word = <T extends string>() => plain<T>('string')

const orNull =
  <T>(read: Reader<T>): Reader<T | null> =>
  (value, where) =>
    value === null ? null : read(value, where)

const list =
  <T>(read: Reader<T>): Reader<T[]> =>
  (value, where) => {
    if (Array.isArray(value)) return value.map((item, index) => read(item, `${where}/${index}`))
    throw new Error(`${where} is not a list but ${JSON.stringify(value)}`)
  }

const record =
  <T extends object>(readers: { readonly [K in keyof T]-?: Reader<T[K]> }): Reader<T> =>
  (value, where) => {
    const fields = Object(value) as Record<string, unknown>
    const read = Object.entries<Reader<unknown>>(readers).map(([name, reader]) => [
      name,
      reader(fields[name], `${where}/${name}`),
    ])
    return Object.fromEntries(read) as T
  }

const draw = record<TypicalDraw>({
  yearFrom: orNull(number),
  yearTo: orNull(number),
  lowW: number,
  typicalW: number,
  highW: number,
  provenance: record<Provenance>({ kind: word(), citation: orNull(text), n: orNull(number) }),
})

/**
 * A category from its stored content. Only this service writes it, after the rules of the trade were checked, and the
 * database lets nobody change it; so this checks the build alone, for the day when a category gets a field that old
 * contents lack. Building field by field also restores the order of the fields, which jsonb does not keep: an
 * answer's bytes do not depend on whether a category was just given or read back.
 * @throws Error naming the field that is not as it should be
 */
export const readContent = record<Category>({
  code: text,
  name: text,
  group: word(),
  aliases: list(text),
  defaultQuantity: number,
  retired: plain<boolean>('boolean'),
  keepPowered: orNull(record<NonNullable<Category['keepPowered']>>({ reason: word(), note: text })),
  powerFactor: record<Range>({ low: number, typical: number, high: number }),
  modes: list(record<CategoryMode>({ mode: word(), defaultHoursPerWeek: number, draws: list(draw) })),
})

/** What is stored of a category: its fields and nothing else that the object may carry. */
export const writeContent = (category: Category): Prisma.InputJsonObject =>
  readContent(category, category.code) as unknown as Prisma.InputJsonObject
