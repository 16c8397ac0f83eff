import { z } from 'zod'
import { namedEmissionFactorSchema } from './emissionFactor.ts'
import { namedTariffSchema } from './tariff.ts'

/** What answers add may be sent back, so that an answer can be changed and returned. */
const retired = z
  .boolean()
  .optional()
  .describe('As it is now, or left out: retiring and restoring are acts of their own')

export const tariffContentSchema = z
  .strictObject({
    ...namedTariffSchema.shape,
    retired,
    sampleData: z.boolean().optional().describe('Follows from the source; what is sent is not looked at'),
  })
  .meta({ id: 'TariffContent', description: 'A tariff as an editor sends it' })

export const emissionFactorContentSchema = z
  .strictObject({ ...namedEmissionFactorSchema.shape, retired })
  .meta({ id: 'EmissionFactorContent', description: 'A published emission factor as an editor sends it' })

const patchOf = (id: string, subject: string) =>
  z.looseObject({}).meta({
    id,
    description: `Members of ${subject} as they are to become (RFC 7396). Lists are replaced as a whole; null takes away what need not be there.`,
  })
export const tariffPatchSchema = patchOf('TariffPatch', 'a tariff')
export const emissionFactorPatchSchema = patchOf('EmissionFactorPatch', 'an emission factor')
