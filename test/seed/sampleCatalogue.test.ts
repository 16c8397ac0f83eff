import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../src/core/catalogue/catalogue.ts'
import {
  GROUPS,
  KEEP_POWERED_REASONS,
  MODES,
  type KeepPoweredReason,
} from '../../src/core/catalogue/category.ts'
import { checkCategory } from '../../src/core/catalogue/checkCategory.ts'
import { findCategory } from '../../src/core/catalogue/findCategory.ts'
import { sharedNames } from '../../src/core/catalogue/sharedNames.ts'
import { readSeed } from '../../src/readSeed.ts'
import { categorySchema } from '../../src/schemas/category.ts'
import { formatCategoriesCsv, parseCategoriesCsv } from '../../src/schemas/categoryCsv.ts'
import { PUBLISHED_DRAWS } from './publishedDraws.ts'

const { categories } = await readSeed()
const catalogue = catalogueOf(1, categories)
const draws = categories.flatMap(({ code, modes }) =>
  modes.flatMap(({ mode, draws: own }) => own.map((draw) => ({ at: `${code} ${mode}`, ...draw }))),
)

test('there are at least 80 categories, at least four in every group', () => {
  expect(categories.length).toBeGreaterThanOrEqual(80)
  for (const group of GROUPS)
    expect([group, categories.filter((each) => each.group === group).length >= 4]).toEqual([group, true])
})

test.each(categories)('$code has the shape and follows the rules of a category', (category) => {
  expect(categorySchema.parse(category)).toEqual(category)
  expect(checkCategory(category)).toEqual([])
})

test('the catalogue survives export and import', () => {
  expect(parseCategoriesCsv(formatCategoriesCsv(categories))).toEqual({ categories, faults: [] })
})

describe('figures', () => {
  test('are all labelled as invented', () => {
    expect(draws.filter(({ provenance }) => provenance.kind !== 'sample')).toEqual([])
  })

  test('repeat no published row of minimum, average and maximum', () => {
    const published = new Map(
      PUBLISHED_DRAWS.map(([product, max, avg, min]) => [`${min} ${avg} ${max}`, product]),
    )
    expect(published.size).toBe(28)
    expect(draws.filter((draw) => published.has(`${draw.lowW} ${draw.typicalW} ${draw.highW}`))).toEqual([])
  })

  test('have two significant digits at most, so that nobody takes them for survey values', () => {
    const rounded = (watts: number) => Number(watts.toPrecision(2)) === watts
    const precise = draws.filter(({ lowW, typicalW, highW }) => ![lowW, typicalW, highW].every(rounded))
    expect(precise).toEqual([])
  })

  test('spread by a factor of 2 to 15 from low to high, with the typical figure between', () => {
    const odd = draws.filter(({ lowW, typicalW, highW }) => {
      const spread = highW / lowW
      return spread < 2 || spread > 15 || typicalW <= lowW || typicalW >= highW
    })
    expect(odd).toEqual([])
  })

  test('never rise with the year of manufacture where a mode has a limit in law', () => {
    for (const { code, modes } of categories)
      for (const { mode, draws: own } of modes.filter((each) => each.mode !== 'idle'))
        for (const [index, draw] of own.entries())
          expect([code, mode, draw.typicalW <= (own[index - 1]?.typicalW ?? Infinity)]).toEqual([
            code,
            mode,
            true,
          ])
  })

  test('of each mode cover every year of manufacture, so that any device gets a figure', () => {
    for (const { code, modes } of categories)
      for (const { mode, draws: own } of modes)
        expect([code, mode, own[0]?.yearFrom, own.at(-1)?.yearTo]).toEqual([code, mode, null, null])
  })
})

describe('names', () => {
  test('lead to one category each', () => {
    expect(sharedNames(categories)).toEqual([])
  })

  test('are plain words, at least two beside the code for every category', () => {
    expect(categories.filter(({ aliases }) => aliases.length < 2).map(({ code }) => code)).toEqual([])
  })

  test.each([
    ['TV', 'television'],
    ['telly', 'television'],
    ['fridge', 'refrigerator'],
    ['icebox', 'refrigerator'],
    ['cooker', 'electric-range'],
    ['stove', 'electric-range'],
    ['dryer', 'tumble-dryer'],
    ['tumble drier', 'tumble-dryer'],
    ['cell phone charger', 'phone-charger'],
    ['mobile phone charger', 'phone-charger'],
    ['furnace', 'boiler-control'],
    ['PC', 'desktop-computer'],
    ['CPAP', 'sleep-breathing-aid'],
  ])('%s is what a householder calls the category %s', (name, code) => {
    expect(findCategory(catalogue, name)?.code).toBe(code)
  })
})

describe('modes', () => {
  test('are all used somewhere', () => {
    const used = new Set(categories.flatMap(({ modes }) => modes.map(({ mode }) => mode)))
    expect([...used].toSorted()).toEqual([...MODES].toSorted())
  })

  test('fit the device: a charger has no-load, a television standby, a router idle alone', () => {
    const modesOf = (code: string) => findCategory(catalogue, code)?.modes.map(({ mode }) => mode)
    expect(modesOf('phone-charger')).toEqual(['no-load'])
    expect(modesOf('smart-television')).toEqual(['standby', 'networked-standby'])
    expect(modesOf('router')).toEqual(['idle'])
    expect(modesOf('refrigerator')).toEqual(['idle'])
    expect(modesOf('washing-machine')).toEqual(['off', 'standby'])
  })
})

describe('what must stay powered', () => {
  test.each<[KeepPoweredReason, string[]]>([
    ['medical', ['sleep-breathing-aid', 'oxygen-concentrator', 'stairlift', 'medical-alarm-base']],
    ['refrigeration', ['refrigerator', 'freezer', 'wine-cooler']],
    ['alarm-and-life-safety', ['alarm-panel', 'smoke-alarm', 'sump-pump-control', 'video-doorbell']],
    ['network-for-others', ['router', 'fibre-terminal', 'mesh-node', 'network-storage']],
    ['frost-protection', ['boiler-control', 'heat-pump-control', 'pipe-heater']],
    ['scheduled-recording', ['digital-recorder', 'recording-set-top-box']],
  ])('for the reason %s: %o', (reason, codes) => {
    for (const code of codes)
      expect([code, findCategory(catalogue, code)?.keepPowered?.reason]).toEqual([code, reason])
  })

  test('has every reason in use, and a note that says what would happen', () => {
    const kept = categories.flatMap(({ keepPowered }) => keepPowered ?? [])
    expect(new Set(kept.map(({ reason }) => reason))).toEqual(new Set(KEEP_POWERED_REASONS))
    expect(kept.filter(({ note }) => note.length < 15)).toEqual([])
  })
})
