import { Prisma } from './generated/client.ts'

/**
 * The advisory locks that this service takes, each for the length of one transaction. PostgreSQL keeps them per
 * database, as two integers: the first is ours ("stby" in ASCII), the second says what is locked.
 */
const OURS = 0x73_74_62_79

export const MIGRATION_LOCK = `pg_advisory_xact_lock(${OURS}, 1)`
export const CATALOGUE_LOCK = `pg_advisory_xact_lock(${OURS}, 2)`
export const REFERENCE_LOCK = `pg_advisory_xact_lock(${OURS}, 5)`
export const ACCESS_LOCK = `pg_advisory_xact_lock(${OURS}, 3)`

/** ("ovly" in ASCII) */
const OVERLAYS = 0x6f_76_6c_79

/** Of one organisation's overlay, and now and then of another one with the same hash, which then waits for no reason. */
export const overlayLock = (organisation: string) =>
  Prisma.sql`pg_advisory_xact_lock(${OVERLAYS}::integer, hashtext(${organisation}))`
