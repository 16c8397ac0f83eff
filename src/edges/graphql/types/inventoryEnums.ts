import type { ChangeCause } from '../../../core/inventory/compareWithToday.ts'
import type { VisitKind } from '../../../core/inventory/inventory.ts'
import { enumOf } from '../enumOf.ts'

export const VisitKindEnum = enumOf<VisitKind>('VisitKind', 'Which visit of a household it is.', {
  first: 'The earliest.',
  'follow-up': 'A later one.',
})

export const ChangeCauseEnum = enumOf<ChangeCause>(
  'ChangeCause',
  'Why an estimate would come out otherwise today.',
  {
    'visit-gone': 'There is no visit on that day any more.',
    inventory: 'The household or the visit was changed.',
    catalogue: 'The catalogue has other figures.',
    tariff: 'The tariff is another one.',
    'emission-factor': 'The emission factor is another one.',
    settings: "The operator's settings are others.",
    method: 'The estimation method is a newer one.',
    'no-longer-fits': 'What was found no longer fits the catalogue, the tariffs or the emission factors.',
  },
)
