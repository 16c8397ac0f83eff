import { z } from 'zod'
import { FaultyInput } from '../../core/fault.ts'
import { readShape } from '../../schemas/readShape.ts'
import { referenceQuery } from '../../schemas/referenceQuery.ts'
import { withoutNulls } from './withoutNulls.ts'

/** A flag is a flag here, and no text as in REST's query. */
export const includeRetired = z.boolean().default(false)

export const referenceRevision = 'Revision of tariffs and emission factors to read; the newest by default.'

/** The revision that a question names. @throws FaultyInput */
export function revisionAsked(given: { readonly referenceRevision?: number | null }): number | undefined {
  const { value, faults } = readShape(referenceQuery, withoutNulls(given))
  if (value === null) throw new FaultyInput(faults)
  return value.referenceRevision
}
