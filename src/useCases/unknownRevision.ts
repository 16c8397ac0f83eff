import { DomainError } from '../core/fault.ts'

/** What is said of a revision that there is none of. */
export const unknownRevision = (revision: number, newest: number) =>
  new DomainError(
    'unknown-revision',
    `There is no catalogue revision ${revision}; the newest is ${newest}. Leave the revision out to use the newest.`,
    { newest },
  )
