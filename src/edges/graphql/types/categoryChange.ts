import type { CategoryChange } from '../../../core/catalogue/categoryChange.ts'
import { builder } from '../builder.ts'
import { FieldChangeType } from './fieldChange.ts'
import { ChangeKindEnum } from './revisionEnums.ts'

export const CategoryChangeType = builder.objectRef<CategoryChange>('CategoryChange').implement({
  description:
    'What happened to one category. The whole of it, before or after, is `category` at the revision before or after.',
  fields: (t) => ({
    code: t.exposeString('code', { description: 'Code of the category.' }),
    name: t.string({ description: 'Its name afterwards.', resolve: ({ after }) => after.name }),
    kind: t.expose('kind', { type: ChangeKindEnum, description: 'What happened.' }),
    fields: t.field({
      type: [FieldChangeType],
      description: 'Every field that differs; none of a category that is new.',
      resolve: ({ fields }) => fields,
    }),
  }),
})
