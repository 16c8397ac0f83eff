import fc from 'fast-check'
import {
  GROUPS,
  KEEP_POWERED_REASONS,
  MODES,
  type Category,
  type Provenance,
  type Range,
} from '../../src/core/catalogue/category.ts'
import { plainName } from '../../src/core/catalogue/findCategory.ts'

/** Text that CSV files and spreadsheets trip over, as well as any text at all. */
const awkward = [
  '=SUM(A1)',
  "'=1+1",
  "''@x",
  '+4',
  '-',
  '@a',
  'a|b',
  'a\\|b\\',
  '"q"',
  'a,b',
  'x;y',
  'l\nm',
  'l\r\nm',
  'l\rm',
  "'tis",
  '＝1',
]
export const anyText = fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom(...awkward))

/** Text as the catalogue keeps it: trimmed, no control characters but line breaks and tabs. */
const plain = anyText
  .map((text) => text.replace(/(?![\t\n\r])[\p{Cc}\p{Cs}]/gu, '').trim())
  .filter((text) => text !== '')
const shortText = plain.map((text) => Array.from(text).slice(0, 50).join('').trim())
const citation = plain
const code = fc.stringMatching(/^[a-z0-9]{1,8}(-[a-z0-9]{1,8}){0,3}$/)
/** Adding zero makes of -0, which no file tells from 0, a plain 0. */
const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((value) => value + 0)

const ordered = (min: number, max: number): fc.Arbitrary<Range> =>
  fc
    .array(figure(min, max), { minLength: 3, maxLength: 3 })
    .map((values) => values.toSorted((a, b) => a - b))
    .map(([low = min, typical = min, high = min]) => ({ low, typical, high }))

const n = fc.integer({ min: 1, max: 1e6 })
const provenance: fc.Arbitrary<Provenance> = fc.oneof(
  fc.constant({ kind: 'sample' as const, citation: null, n: null }),
  fc.record({ kind: fc.constant('published' as const), citation, n: fc.option(n) }),
  fc.record({ kind: fc.constant('programme' as const), citation: fc.option(citation), n }),
)

/** Spans of years that follow each other without hole, open or closed at either end. */
const spans = fc
  .record({
    starts: fc.uniqueArray(fc.integer({ min: 1950, max: 2090 }), { minLength: 1, maxLength: 4 }),
    openStart: fc.boolean(),
    openEnd: fc.boolean(),
  })
  .map(({ starts, openStart, openEnd }) => {
    const sorted = starts.toSorted((a, b) => a - b)
    return sorted.map((from, index) => {
      const next = sorted[index + 1]
      const yearTo = next === undefined ? (openEnd ? null : 2100) : next - 1
      return { yearFrom: index === 0 && openStart ? null : from, yearTo }
    })
  })

const draws = spans.chain((years) =>
  fc.tuple(
    ...years.map((span) =>
      fc.record({ watts: ordered(0, 100_000), provenance }).map(({ watts, provenance: from }) => ({
        ...span,
        lowW: watts.low,
        typicalW: watts.typical,
        highW: watts.high,
        provenance: from,
      })),
    ),
  ),
)

const modes = fc
  .uniqueArray(fc.constantFrom(...MODES), { minLength: 1, maxLength: MODES.length })
  .chain((names) =>
    fc.tuple(
      ...names.map((mode) =>
        fc.record({ mode: fc.constant(mode), defaultHoursPerWeek: figure(0, 33), draws }),
      ),
    ),
  )

/** Any category that has the right shape and follows every rule. */
const category: fc.Arbitrary<Category> = fc
  .record({
    code,
    name: shortText,
    group: fc.constantFrom(...GROUPS),
    aliases: fc.uniqueArray(shortText, { maxLength: 5, selector: plainName }),
    defaultQuantity: fc.integer({ min: 1, max: 1000 }),
    retired: fc.boolean(),
    keepPowered: fc.option(fc.record({ reason: fc.constantFrom(...KEEP_POWERED_REASONS), note: shortText })),
    powerFactor: ordered(0.001, 1),
    modes,
  })
  .map((drawn) => ({ ...drawn, aliases: drawn.aliases.filter((alias) => saysMore(alias, drawn)) }))

function saysMore(alias: string, { code: own, name }: { code: string; name: string }): boolean {
  return ![plainName(own), plainName(name), ''].includes(plainName(alias))
}

export const categories = fc.uniqueArray(category, { maxLength: 6, selector: (each) => each.code })
