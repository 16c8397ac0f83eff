import type { z } from 'zod'
import type { categoryContentSchema, categoryPatchSchema } from '../../../schemas/catalogueEdit.ts'

/** The examples of the API description for an organisation's own figures; all of it is invented. */
const readings = [
  {
    yearFrom: null,
    yearTo: null,
    lowW: 0.2,
    typicalW: 0.4,
    highW: 0.9,
    provenance: { kind: 'programme', citation: null, n: 42 },
  },
] as const
export const ownBoiler = {
  code: 'our-rental-boiler-control',
  name: 'Control of the boilers that we rent out',
  group: 'comfort',
  aliases: ['rental boiler'],
  defaultQuantity: 1,
  retired: false,
  keepPowered: { reason: 'frost-protection', note: 'Pipes may freeze.' },
  powerFactor: { low: 0.3, typical: 0.5, high: 0.8 },
  modes: [{ mode: 'standby', defaultHoursPerWeek: 168, draws: [...readings] }],
} as const satisfies z.input<typeof categoryContentSchema>

export const OVERLAY_REQUEST_EXAMPLES = {
  layCategory: { own: { summary: 'A kind of device that only your homes have', value: ownBoiler } },
  patchOverlayCategory: {
    quantity: {
      summary: 'The shared category with another number of devices',
      value: { defaultQuantity: 2 } satisfies z.input<typeof categoryPatchSchema>,
    },
  },
} as const
