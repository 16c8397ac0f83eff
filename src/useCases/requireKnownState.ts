import type { FieldChange } from '../core/catalogue/fieldChanges.ts'
import type { Revision } from '../core/catalogue/revision.ts'
import { DomainError } from '../core/fault.ts'

/** One thing that is edited, as it is now. */
export interface EditedSubject {
  readonly code: string
  /** Of the refusal of an edit that comes too late. */
  readonly staleCode: string
  /** The revision that gave it its present state. */
  readonly changedIn: number
  /** As a refusal shows it. */
  readonly current: unknown
  /** The revisions of a range; see the stores. */
  revisions(oldest: number, newest: number): Promise<readonly Revision[]>
  /** What changed since a revision; null where the subject is not known there. */
  changesSince(revision: number): Promise<readonly FieldChange[] | null>
}

/**
 * Sees that an edit of one thing was made by somebody who knows its present state.
 * @param basedOn the revisions that gave the subject the states that the editor knows; null where none is named
 * @throws DomainError precondition-required; that of `staleCode`, which shows what changed meanwhile
 */
export async function requireKnownState(
  subject: EditedSubject,
  basedOn: readonly number[] | null,
): Promise<void> {
  const { code, changedIn, current } = subject
  if (basedOn === null)
    throw new DomainError(
      'precondition-required',
      `Name the state of ${code} that the edit is based on, so that nobody's edit is overwritten unseen.`,
    )
  if (basedOn.includes(changedIn)) return
  const [lastEdit] = await subject.revisions(changedIn, changedIn)
  const [known] = basedOn
  throw new DomainError(
    subject.staleCode,
    `${code} was changed in revision ${changedIn} by ${lastEdit!.author.organisation} ("${lastEdit!.reason}"). ` +
      'Look at what changed, and edit the present state.',
    // Where the state that the editor names is not known, nobody can say what changed since.
    {
      changedIn,
      lastEdit,
      current,
      changes: known === undefined ? null : await subject.changesSince(known),
    },
  )
}
