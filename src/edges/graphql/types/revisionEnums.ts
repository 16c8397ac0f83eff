import type { ChangeKind } from '../../../core/catalogue/categoryChange.ts'
import type { RevisionAction } from '../../../core/catalogue/revision.ts'
import { enumOf } from '../enumOf.ts'

export const RevisionActionEnum = enumOf<RevisionAction>(
  'RevisionAction',
  'What kind of act made a revision of the catalogue.',
  {
    seed: 'The sample catalogue was loaded into an empty store.',
    create: 'A category was made.',
    change: 'A category was changed.',
    retire: 'A category was retired.',
    restore: 'A retired category was brought back.',
    import: 'A file was taken over.',
    'accept-proposal': 'A proposal from readings was accepted.',
    'restore-revision': 'The catalogue was brought back to what it was at an older revision.',
  },
)

export const ChangeKindEnum = enumOf<ChangeKind>(
  'ChangeKind',
  'What happened to a category between two states of the catalogue.',
  {
    added: 'It is new.',
    changed: 'Its fields changed.',
    retired: 'It was retired; other fields may have changed with it.',
    restored: 'It was brought back; other fields may have changed with it.',
  },
)
