import { createHash } from 'node:crypto'
import { readdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { DomainError } from '../core/fault.ts'
import { projectFolder } from './projectFolder.ts'

export interface Migration {
  /** The file's name; migrations are applied in the order of their names. */
  readonly name: string
  readonly sql: string
  /** SHA-256 of the text in hexadecimal. */
  readonly checksum: string
}

const MIGRATIONS_FOLDER = join(projectFolder(import.meta.url), 'prisma', 'migrations')

/**
 * Reads the migration files of a folder, sorted by name. Line ends count as LF, so that a checkout with CRLF has the
 * same checksums.
 * @throws DomainError migration-files-unfit where the folder is empty, a name is not like 0001_words.sql, or two files
 * have one number
 */
export async function readMigrations(folder = MIGRATIONS_FOLDER): Promise<readonly Migration[]> {
  const names = (await readdir(folder)).filter((name) => name.endsWith('.sql')).sort()
  const problems = names.flatMap((name, index) => problemOf(name, names[index - 1]))
  if (names.length === 0) problems.push(`There is no migration in ${folder}.`)
  if (problems.length > 0) throw new DomainError('migration-files-unfit', problems.join(' '), { problems })
  return Promise.all(
    names.map(async (name) => {
      const sql = (await readFile(join(folder, name), 'utf8')).replaceAll('\r\n', '\n')
      return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') }
    }),
  )
}

function problemOf(name: string, previous: string | undefined): string[] {
  if (!/^\d{4}_[a-z0-9_]+\.sql$/.test(name))
    return [
      `Rename the migration ${name}: four digits, an underscore and small letters, as in 0001_catalogue.sql.`,
    ]
  if (previous?.slice(0, 4) === name.slice(0, 4))
    return [
      `The migrations ${previous} and ${name} have the same number: give the newer one the next free number.`,
    ]
  return []
}
