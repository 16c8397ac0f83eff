import type { ChangeKind } from '../../../core/catalogue/categoryChange.ts'
import type { RevisionAction } from '../../../core/catalogue/revision.ts'
import { enumOf } from '../enumOf.ts'

export const RevisionActionEnum = enumOf<RevisionAction>(
  'RevisionAction',
  'What kind of act made a revision of the catalogue, or of tariffs and emission factors.',
  {
    seed: 'What the service is shipped with was loaded into an empty store.',
    create: 'A category, a tariff or an emission factor was made.',
    change: 'One was changed.',
    retire: 'One was retired.',
    restore: 'A retired one was brought back.',
    import: 'A file was taken over.',
    'accept-proposal': 'A proposal from readings was accepted.',
    'restore-revision': 'The catalogue was brought back to what it was at an older revision.',
  },
)

export const ChangeKindEnum = enumOf<ChangeKind>(
  'ChangeKind',
  'What happened to a category, a tariff or an emission factor between two states.',
  {
    added: 'It is new.',
    changed: 'Its fields changed.',
    retired: 'It was retired; other fields may have changed with it.',
    restored: 'It was brought back; other fields may have changed with it.',
  },
)
