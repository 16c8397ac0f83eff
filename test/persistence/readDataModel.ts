import { execFile } from 'node:child_process'
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { projectFolder } from '../../src/persistence/projectFolder.ts'

/** The part of Prisma's data model that says how the tables must be. */
export interface DataModel {
  readonly models: readonly {
    readonly name: string
    readonly dbName: string | null
    readonly fields: readonly Field[]
  }[]
  readonly indexes: readonly {
    readonly model: string
    readonly type: 'id' | 'normal' | 'unique'
    readonly fields: readonly { readonly name: string }[]
  }[]
}

interface Field {
  readonly name: string
  readonly dbName?: string
  readonly kind: 'scalar' | 'object' | 'enum' | 'unsupported'
  readonly type: string
  /** Name and arguments of a @db attribute. */
  readonly nativeType: readonly [string, readonly string[]] | null
  readonly isRequired: boolean
  readonly isList: boolean
  readonly hasDefaultValue: boolean
  readonly relationFromFields?: readonly string[]
  readonly relationToFields?: readonly string[]
  readonly relationOnDelete?: string
  readonly relationOnUpdate?: string
}

/** schema.prisma as Prisma itself reads it. */
export async function readDataModel(): Promise<DataModel> {
  const root = projectFolder(import.meta.url)
  const folder = await mkdtemp(join(tmpdir(), 'data-model-'))
  try {
    const [schema, output] = [join(folder, 'schema.prisma'), join(folder, 'dataModel.json')]
    const program = fileURLToPath(new URL('./dataModelProcess.ts', import.meta.url))
    const provider = `"${process.execPath}" --import "${import.meta.resolve('tsx')}" "${program}"`
    const generator = `generator dataModel {\n provider = ${JSON.stringify(provider)}\n output = ${JSON.stringify(output)}\n}\n`
    await writeFile(schema, generator + (await readFile(join(root, 'prisma', 'schema.prisma'), 'utf8')))
    const prisma = createRequire(import.meta.url).resolve('prisma/build/index.js')
    const config = join(root, 'prisma', 'prisma.config.ts')
    const options = ['generate', '--config', config, '--schema', schema, '--generator', 'dataModel']
    await promisify(execFile)(process.execPath, [prisma, ...options], { cwd: root })
    return JSON.parse(await readFile(output, 'utf8')) as DataModel
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}
