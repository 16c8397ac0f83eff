import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { plantTree, removeTree, runTool, settingsFile } from './plantedTree.ts'

/** Allowed by the dependency rule: one import of every kind that the table names. */
const CLEAN = {
  'src/core/fault.ts': 'export class DomainError extends Error {}',
  'src/core/watts.ts': [
    "import { Decimal } from 'decimal.js'",
    "import { distance } from 'fastest-levenshtein'",
    "import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'",
    'export type Watts = Decimal',
    'export const far = [distance, xoroshiro128plus]',
  ].join('\n'),
  'src/stores/wattStore.ts':
    "import type { Watts } from '../core/watts.ts'\nexport type WattStore = Map<string, Watts>",
  'src/schemas/watts.ts':
    "import { z } from 'zod'\nimport { far } from '../core/watts.ts'\nexport const schema = [z, far]",
  'src/useCases/readWatts.ts':
    "import { far } from '../core/watts.ts'\nimport type { WattStore } from '../stores/wattStore.ts'\nexport const read = (store: WattStore) => [store, far]",
  'src/edges/rest/watts.ts': [
    "import fastify from 'fastify'",
    "import { DomainError } from '../../core/fault.ts'",
    "import type { Watts } from '../../core/watts.ts'",
    "import { schema } from '../../schemas/watts.ts'",
    "import { read } from '../../useCases/readWatts.ts'",
    'export const route = (watts: Watts) => [fastify, DomainError, schema, read, watts]',
  ].join('\n'),
  'src/persistence/watts.ts': [
    "import { mkdir } from 'node:fs/promises'",
    "import { PGlite } from '@electric-sql/pglite'",
    "import { PrismaPg } from '@prisma/adapter-pg'",
    "import { Pool } from 'pg'",
    "import { far } from '../core/watts.ts'",
    "import type { WattStore } from '../stores/wattStore.ts'",
    'export const open = (store: WattStore) => [mkdir, PGlite, PrismaPg, Pool, far, store]',
  ].join('\n'),
  'src/config.ts': 'export const config = {}',
  'src/main.ts':
    "import { config } from './config.ts'\nimport { route } from './edges/rest/watts.ts'\nimport { open } from './persistence/watts.ts'\nconsole.log(config, route, open)",
}

/** File, what it wrongly imports, and the rule that must name it. */
const PLANTED: readonly (readonly [file: string, source: string, rule: string])[] = [
  ['src/core/readsFiles.ts', 'node:fs', 'layer-core'],
  ['src/core/knowsFastify.ts', 'fastify', 'layer-core'],
  ['src/core/knowsZod.ts', 'zod', 'layer-core'],
  ['src/core/knowsStores.ts', '../stores/wattStore.ts', 'layer-core'],
  ['src/core/knowsUseCases.ts', '../useCases/readWatts.ts', 'layer-core'],
  ['src/stores/computes.ts', '../core/watts.ts', 'types-only-stores'],
  ['src/stores/knowsPrisma.ts', '@prisma/client', 'layer-stores'],
  ['src/schemas/knowsUseCases.ts', '../useCases/readWatts.ts', 'layer-schemas'],
  ['src/schemas/readsFiles.ts', 'node:fs', 'layer-schemas'],
  ['src/useCases/knowsSchemas.ts', '../schemas/watts.ts', 'layer-useCases'],
  ['src/useCases/knowsPersistence.ts', '../persistence/watts.ts', 'layer-useCases'],
  ['src/useCases/knowsFastify.ts', 'fastify', 'layer-useCases'],
  ['src/edges/rest/computes.ts', '../../core/watts.ts', 'types-only-edges'],
  ['src/edges/rest/knowsStores.ts', '../../stores/wattStore.ts', 'layer-edges'],
  ['src/edges/graphql/knowsPersistence.ts', '../../persistence/watts.ts', 'layer-edges'],
  ['src/edges/graphql/knowsPrisma.ts', '@prisma/client', 'layer-edges'],
  ['src/persistence/knowsUseCases.ts', '../useCases/readWatts.ts', 'layer-persistence'],
  ['src/persistence/knowsFastify.ts', 'fastify', 'layer-persistence'],
  ['src/edges/rest/readsSettings.ts', '../../config.ts', 'nothing-imports-the-root'],
  ['src/demo.ts', '@electric-sql/pglite', 'database-only-in-persistence'],
  ['src/log.ts', './helpers/anything.ts', 'no-other-places'],
  ['src/app.ts', '../test/anything.ts', 'source-stands-alone'],
  ['src/readSeed.ts', 'supertest', 'no-development-packages'],
  ['src/core/leadsNowhere.ts', './absent.ts', 'no-missing-files'],
]
const CIRCLE = {
  'src/core/hen.ts': "import { egg } from './egg.ts'\nexport const hen = () => egg",
  'src/core/egg.ts': "import { hen } from './hen.ts'\nexport const egg = () => hen",
}

const cruise = (tree: string) =>
  runTool(tree, 'depcruise', ['--config', settingsFile('dependency-cruiser.cjs'), 'src', 'test'])

describe('The dependency rule', () => {
  const trees: string[] = []
  const violations = new Map<string, string[]>()
  let code: number | null = 0

  beforeAll(() => {
    const planted = PLANTED.map(([file, source]) => [
      file,
      `import * as it from '${source}'\nexport const used = it`,
    ])
    const others = { ...CIRCLE, 'src/helpers/anything.ts': 'export {}', 'test/anything.ts': 'export {}' }
    const tree = plantTree({ ...CLEAN, ...others, ...Object.fromEntries(planted) })
    trees.push(tree)
    const ran = cruise(tree)
    code = ran.code
    for (const [, rule, file] of ran.stdout.matchAll(/^ *error ([\w-]+): (\S+) →/gm))
      violations.set(file!, [...(violations.get(file!) ?? []), rule!])
  })
  afterAll(() => trees.forEach(removeTree))

  it('lets through what its table allows', () => {
    const tree = plantTree({ ...CLEAN, 'test/anything.ts': 'export {}' })
    trees.push(tree)
    expect(cruise(tree)).toMatchObject({ code: 0 })
  })

  it('shuts the gate where it is broken', () => {
    expect(code).toBeGreaterThanOrEqual(PLANTED.length)
  })

  it.each(PLANTED)('finds %s importing %s (%s)', (file, _source, rule) => {
    expect(violations.get(file)).toContain(rule)
  })

  it('finds two files that need each other', () => {
    expect(violations.get('src/core/hen.ts') ?? violations.get('src/core/egg.ts')).toContain('no-cycles')
  })

  it('names no file that keeps to it', () => {
    for (const file of Object.keys(CLEAN)) expect(violations.get(file)).toBeUndefined()
  })
})
