import { z } from 'zod'

/** Edits name a category by its code alone; an alias may lead elsewhere tomorrow. */
export const categoryCodeParameter = z.strictObject({
  code: z.string().describe('Code of the category, such as set-top-box; not a name or alias'),
})

/** What every edit of a category that exists may answer. */
export const EDITS_CATEGORY = [
  'unknown-category',
  'malformed-condition',
  'precondition-required',
  'stale-category',
  'address-too-long',
] as const
