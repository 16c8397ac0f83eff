import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { buildSchema, findBreakingChanges, printSchema } from 'graphql'
import { beforeAll, expect, test } from 'vitest'
import { schema } from '../../../src/edges/graphql/schema.ts'

/**
 * Breaking changes since the last release that are meant, word for word as the test names them, each with the reason. A
 * release with one is a major version; once it is out, schema.released.graphql is written anew and this is empty again.
 */
const MONEY =
  'MoneyInterval has every field of Interval and decimal amounts besides; only a fragment on Interval breaks.'
const MEANT: Readonly<Record<string, string>> = {
  'DeviceEstimate.costPerYear changed type from Interval! to MoneyInterval!.': MONEY,
  'TotalEstimate.costPerYear changed type from Interval! to MoneyInterval!.': MONEY,
}

const RELEASED = fileURLToPath(new URL('../../../src/edges/graphql/schema.released.graphql', import.meta.url))

let released: string
beforeAll(async () => {
  // Without descriptions, so that the tests below can take a line out.
  released = (await readFile(RELEASED, 'utf8')).replaceAll(/^ *"""[\s\S]*?"""\n/gm, '')
})

/** What callers of the released schema would find broken, were this one served in its place. */
const brokenBy = (text: string) =>
  findBreakingChanges(buildSchema(released), buildSchema(text)).map(({ description }) => description)

test('nothing that callers of the released schema rely on is broken, but what is meant to be', () => {
  expect(brokenBy(printSchema(schema)).sort()).toEqual(Object.keys(MEANT).sort())
})

test.each([
  ['a field that goes', '  kind: ProvenanceKind!\n', '', 'Provenance.kind was removed.'],
  ['a field that may become null', '  lowW: Float!\n', '  lowW: Float\n', 'TypicalDraw.lowW changed type'],
  [
    'an argument that becomes required',
    'category(',
    'category(extra: Int!, ',
    'extra on Query.category was added',
  ],
  ['a value that an enum loses', '  NETWORKED_STANDBY\n', '', 'NETWORKED_STANDBY was removed'],
  [
    'an input field that becomes required',
    '  quantity: Int\n',
    '  quantity: Int!\n',
    'DeviceInput.quantity changed type',
  ],
])('%s would be seen', (_, before, after, told) => {
  expect(released).toContain(before)
  expect(brokenBy(released.replaceAll(before, after)).join('\n')).toContain(told)
})

test('what is added breaks nobody', () => {
  const more = released.replace('  lowW: Float!\n', '  lowW: Float!\n  more: Int\n')
  expect(more).not.toBe(released)
  expect(brokenBy(more)).toEqual([])
})
