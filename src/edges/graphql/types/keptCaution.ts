import type { KeptCaution } from '../../../core/cautions/caution.ts'
import { builder } from '../builder.ts'
import { CautionPlaceEnum } from './limitEnums.ts'
import { SourceMarkEnum } from './tariffEnums.ts'

export const KeptCautionType = builder.objectRef<KeptCaution>('KeptCaution').implement({
  description: 'A safety statement, and the answers that it goes with.',
  fields: (t) => ({
    code: t.exposeString('code', { description: 'Stable name in kebab-case.' }),
    message: t.exposeString('message', { description: 'The statement.' }),
    appliesTo: t.field({
      type: [CautionPlaceEnum],
      description: 'Which answers it goes with.',
      resolve: ({ appliesTo }) => appliesTo,
    }),
    source: t.exposeString('source', { description: 'Where it comes from.' }),
    mark: t.expose('mark', {
      type: SourceMarkEnum,
      nullable: true,
      description: 'How well the source is confirmed; null for common practice without one.',
    }),
  }),
})
