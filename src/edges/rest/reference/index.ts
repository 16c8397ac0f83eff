import type { RestContext } from '../restContext.ts'
import type { RestApp } from '../submitted.ts'
import { getEntry } from './getEntry.ts'
import { getReferenceRevision } from './getReferenceRevision.ts'
import { getReferenceRevisions } from './getReferenceRevisions.ts'
import { patchEntry } from './patchEntry.ts'
import { postEntry } from './postEntry.ts'
import { putEntry } from './putEntry.ts'
import { EMISSION_FACTOR, TARIFF } from './resource.ts'
import { retireEntry } from './retireEntry.ts'

type AddRoute = (app: RestApp, context: RestContext) => void

/** The routes that read and edit single tariffs and emission factors, and those of their history. */
export const REFERENCE_ROUTES: readonly AddRoute[] = [
  getEntry(TARIFF),
  postEntry(TARIFF),
  putEntry(TARIFF),
  patchEntry(TARIFF),
  retireEntry(TARIFF, 'retire'),
  retireEntry(TARIFF, 'restore'),
  getEntry(EMISSION_FACTOR),
  postEntry(EMISSION_FACTOR),
  putEntry(EMISSION_FACTOR),
  patchEntry(EMISSION_FACTOR),
  retireEntry(EMISSION_FACTOR, 'retire'),
  retireEntry(EMISSION_FACTOR, 'restore'),
  getReferenceRevisions,
  getReferenceRevision,
]
