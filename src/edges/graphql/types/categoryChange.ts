import type { CategoryChange } from '../../../core/catalogue/categoryChange.ts'
import { readRevisionChange } from '../../../useCases/readRevision.ts'
import { builder } from '../builder.ts'
import { FieldChangeType } from './fieldChange.ts'
import { ChangeKindEnum } from './revisionEnums.ts'

/** A change, and the number of the revision that made it. */
export interface RevisionChange extends CategoryChange {
  readonly revision: number
}

/** As in `7.set-top-box`. */
const NAME = /^([1-9][0-9]{0,8})\.([a-z0-9-]{1,64})$/

export const CategoryChangeType = builder.node(builder.objectRef<RevisionChange>('CategoryChange'), {
  description:
    'What a revision changed of one category. The whole of the category, before or after, is `category` at the revision before or at this one.',
  id: {
    description: 'Opaque name of the change, unique in the whole service.',
    resolve: ({ revision, code }) => `${revision}.${code}`,
  },
  loadOne: async (name, { deps }) => {
    const [, number = '', code = ''] = NAME.exec(name) ?? []
    const change = code === '' ? null : await readRevisionChange(deps, Number(number), code)
    return change && { ...change, revision: Number(number) }
  },
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
