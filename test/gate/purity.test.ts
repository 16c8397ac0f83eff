import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { plantTree, removeTree, runTool, settingsFile } from './plantedTree.ts'

const CLEAN = {
  'src/config.ts': 'export const port = process.env.PORT',
  'src/core/repeatable.ts': 'export const dayOf = (at: Date) => new Date(at.getTime()).getUTCDate()',
  'test/runs.test.ts': "import { it, expect } from 'vitest'\nit('adds', () => { expect(1 + 1).toBe(2) })",
}

/** File, a line that must not stand in it, and the rule that must name it. */
const PLANTED: readonly (readonly [file: string, line: string, rule: string])[] = [
  ['src/core/clock.ts', 'export const now = Date.now()', 'no-restricted-properties'],
  ['src/core/today.ts', 'export const today = new Date()', 'no-restricted-syntax'],
  ['src/core/dice.ts', 'export const dice = Math.random()', 'no-restricted-properties'],
  ['src/core/talk.ts', "console.log('hello')", 'no-restricted-globals'],
  ['src/core/wait.ts', 'setTimeout(() => undefined, 1)', 'no-restricted-globals'],
  ['src/useCases/clock.ts', 'export const now = Date.now()', 'no-restricted-properties'],
  ['src/schemas/dice.ts', 'export const dice = Math.random()', 'no-restricted-properties'],
  ['src/edges/rest/env.ts', 'export const port = process.env.PORT', 'no-restricted-properties'],
  ['src/edges/rest/bracket.ts', "export const port = process['env']['PORT']", 'no-restricted-properties'],
  ['src/persistence/env.ts', 'export const { env } = process', 'no-restricted-properties'],
  ['src/main.ts', 'export const port = globalThis.process.env.PORT', 'no-restricted-syntax'],
  ['src/app.ts', "export { env } from 'node:process'", '@typescript-eslint/no-restricted-imports'],
  ['src/edges/rest/drop.ts', 'try { JSON.parse("") } catch {}', 'no-restricted-syntax'],
  ['src/edges/rest/forget.ts', 'void Promise.resolve(1).catch(() => {})', 'no-restricted-syntax'],
  ['src/edges/rest/any.ts', 'export const anything: any = 1', '@typescript-eslint/no-explicit-any'],
  [
    'src/edges/rest/ignore.ts',
    '// @ts-ignore\nexport const one: string = 1',
    '@typescript-eslint/ban-ts-comment',
  ],
  [
    'src/edges/rest/off.ts',
    '/* eslint-disable */\nexport const anything: any = 1',
    '@typescript-eslint/no-explicit-any',
  ],
  [
    'test/skipped.test.ts',
    "import { it } from 'vitest'\nit.skip('rests', () => undefined)",
    'no-restricted-syntax',
  ],
  [
    'test/only.test.ts',
    "import { it } from 'vitest'\nit.only('runs', () => undefined)",
    'no-restricted-syntax',
  ],
]

interface Linted {
  readonly filePath: string
  readonly messages: readonly { readonly ruleId: string | null }[]
}

describe('The code rules', () => {
  let tree = ''
  let code: number | null = 0
  const broken = new Map<string, (string | null)[]>()

  beforeAll(() => {
    tree = plantTree({ ...CLEAN, ...Object.fromEntries(PLANTED.map(([file, line]) => [file, line])) })
    const ran = runTool(tree, 'eslint', [
      '--config',
      settingsFile('eslint.config.js'),
      '--format',
      'json',
      'src',
      'test',
    ])
    code = ran.code
    for (const { filePath, messages } of JSON.parse(ran.stdout) as Linted[])
      broken.set(
        filePath,
        messages.map(({ ruleId }) => ruleId),
      )
  })
  afterAll(() => removeTree(tree))

  it('shut the gate where they are broken', () => {
    expect(code).toBe(1)
  })

  it.each(PLANTED)('find in %s: %s', (file, _line, rule) => {
    expect(broken.get(`${tree}/${file}`)).toContain(rule)
  })

  it.each(Object.keys(CLEAN))('let %s through', (file) => {
    expect(broken.get(`${tree}/${file}`)).toEqual([])
  })
})
