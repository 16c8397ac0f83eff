import type { Caution } from '../../../core/cautions/caution.ts'
import type { Warning } from '../../../core/estimate/estimate.ts'
import { builder } from '../builder.ts'

export const WarningType = builder.objectRef<Warning>('Warning').implement({
  description: 'Something that the reader of a figure must know about it.',
  fields: (t) => ({
    code: t.exposeString('code', { description: 'Stable name in kebab-case.' }),
    message: t.exposeString('message', { description: 'One sentence for people.' }),
  }),
})

export const CautionType = builder.objectRef<Caution>('Caution').implement({
  description: 'A safety statement that goes wherever the work it speaks of is suggested.',
  fields: (t) => ({
    code: t.exposeString('code', { description: 'Stable name in kebab-case.' }),
    message: t.exposeString('message', { description: 'The statement.' }),
    source: t.exposeString('source', { description: 'Where it comes from.' }),
  }),
})
