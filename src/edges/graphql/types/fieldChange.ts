import type { FieldChange } from '../../../core/catalogue/fieldChanges.ts'
import { builder } from '../builder.ts'

/** A side that lacks the field is null; a null that is there is the text null. */
const asText = (value: unknown) => (value === undefined ? null : JSON.stringify(value))

export const FieldChangeType = builder.objectRef<FieldChange>('FieldChange').implement({
  description: 'One field that differs. A list whose members are other ones is one field, as a whole.',
  fields: (t) => ({
    pointer: t.exposeString('pointer', {
      description: 'Where in what was changed; JSON Pointer (RFC 6901).',
    }),
    before: t.string({
      nullable: true,
      description: 'The value before, as JSON; null where there was no such field.',
      resolve: ({ before }) => asText(before),
    }),
    after: t.string({
      nullable: true,
      description: 'The value after, as JSON; null where there is no such field.',
      resolve: ({ after }) => asText(after),
    }),
  }),
})
