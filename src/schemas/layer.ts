import { z } from 'zod'
import { LAYERS } from '../core/catalogue/overlay.ts'

/** Whose figures these are: everybody's, or the own ones that the caller's organisation has laid over them. */
export const layer = z.enum(LAYERS)

/** Which state of the organisation's own figures an answer was worked out with. */
export const overlayRevisionUsed = z
  .int()
  .describe("Revision of your organisation's own figures over the catalogue; 0 where there were none")

/** Which state of them a request asks for. */
export const askedOverlayRevision = z
  .int()
  .nonnegative()
  .max(2_147_483_647)
  .describe("Revision of your organisation's own figures; 0: without them; the newest where it is left out")

/** The same as a part of an address, where an empty text must not count as 0. */
export const overlayRevisionText = z
  .string()
  .regex(/^\d{1,10}$/, 'must be a whole number')
  .transform(Number)
  .pipe(askedOverlayRevision)
