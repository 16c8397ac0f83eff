import type { Catalogue } from './catalogue.ts'

/** What every answer that was worked out with a catalogue names, so that it can be worked out again for ever. */
export interface RevisionsUsed {
  readonly catalogueRevision: number
  /** Of the figures of the caller's organisation that lay over it; 0 where there were none. */
  readonly overlayRevision: number
}

export const revisionsUsed = ({ revision, overlay }: Catalogue): RevisionsUsed => ({
  catalogueRevision: revision,
  overlayRevision: overlay?.revision ?? 0,
})
