import type { Origin } from '../../src/core/access/caller.ts'
import type { RevisionNote } from '../../src/core/catalogue/revision.ts'

/** The request of an editor that the tests speak of. */
const anOrigin: Origin = {
  caller: { organisation: 'an-organisation', keyId: 'a-key', scopes: ['catalogue:edit'] },
  requestId: 'a-request',
}

/** What an edit in a test says of itself. */
export const aNote: RevisionNote = {
  action: 'change',
  origin: anOrigin,
  reason: 'a test',
  at: new Date('2024-02-29T23:59:58.789Z'),
}
