import { DomainError } from '../core/fault.ts'
import type { Migration } from './readMigrations.ts'

/** A row of the table schema_migration: a migration that the database has seen. */
export interface AppliedMigration {
  readonly name: string
  readonly checksum: string
}

/**
 * The first migration that is not applied yet, or null where all are.
 * @throws DomainError migrations-disagree, naming every migration that was changed, is missing or is out of order
 */
export function nextMigration(
  files: readonly Migration[],
  applied: readonly AppliedMigration[],
): Migration | null {
  const problems = [
    ...applied.flatMap((row) => problemOfApplied(row, files)),
    ...outOfOrder(files, applied).map(
      (late) =>
        `Migration ${late} is out of order: a later one is applied already. Give its file a number after the last ` +
        'applied one.',
    ),
  ]
  if (problems.length > 0)
    throw new DomainError('migrations-disagree', `The database is left as it is. ${problems.join(' ')}`, {
      problems,
    })
  return files[applied.length] ?? null
}

function problemOfApplied({ name, checksum }: AppliedMigration, files: readonly Migration[]): string[] {
  const file = files.find((candidate) => candidate.name === name)
  if (file === undefined)
    return [
      `Migration ${name} is missing: it is applied in the database, but prisma/migrations has no such file. ` +
        'Start the version of the service that has it (an older version cannot use a newer database), or put the file back.',
    ]
  if (file.checksum === checksum) return []
  return [
    `Migration ${name} was changed after it was applied: its SHA-256 is ${file.checksum}, not ${checksum}. ` +
      'Put the file back as it was, and make the change in a new migration.',
  ]
}

function outOfOrder(files: readonly Migration[], applied: readonly AppliedMigration[]): string[] {
  const known = new Set(applied.map(({ name }) => name))
  const pending = files.map(({ name }) => name).filter((name) => !known.has(name))
  return pending.filter((name) => applied.some((row) => row.name > name))
}
