import type { FieldChange } from '../../../core/catalogue/fieldChanges.ts'
import type { OverlayAction, OverlayRevision } from '../../../core/catalogue/overlayRevision.ts'
import type { GraphqlContext } from '../context.ts'
import { readOverlayRevision } from '../../../useCases/readOverlay.ts'
import { builder } from '../builder.ts'
import { enumOf } from '../enumOf.ts'
import { nodeOrNull } from '../nodeOrNull.ts'
import { AuthorType } from './catalogueRevision.ts'
import { FieldChangeType } from './fieldChange.ts'

const OverlayActionEnum = enumOf<OverlayAction>(
  'OverlayAction',
  "What kind of act made a revision of an organisation's own figures.",
  {
    lay: 'A category was laid over the shared catalogue.',
    change: 'A category of its own was changed.',
    remove: 'A category of its own was taken away; the shared figure is back.',
  },
)

/** A revision that an id may name; numbers beyond are none. */
const NUMBER = /^[1-9][0-9]{0,8}$/
const NAME = /^([a-z0-9-]+)\.(.+)$/

/** The own revision that an id names: that of another organisation is none. */
async function loadRevision(name: string, { deps, sender }: GraphqlContext): Promise<OverlayRevision | null> {
  const [, organisation, number = ''] = NAME.exec(name) ?? []
  if (!NUMBER.test(number) || organisation !== sender.caller?.organisation) return null
  return nodeOrNull(() => readOverlayRevision(deps, sender, Number(number)))
}

export const OverlayRevisionType = builder.node(builder.objectRef<OverlayRevision>('OverlayRevision'), {
  description:
    "One numbered state of your organisation's own figures, and what its author said of it. Nothing can change or remove it.",
  id: {
    description: 'Opaque name of the revision, unique in the whole service.',
    resolve: ({ number, author }) => `${author.organisation}.${number}`,
  },
  loadOne: loadRevision,
  fields: (t) => ({
    number: t.exposeInt('number', { description: 'Its number; the one after it has the next.' }),
    action: t.expose('action', { type: OverlayActionEnum, description: 'What kind of act made it.' }),
    code: t.exposeString('code', { description: 'Code of the one category that it is about.' }),
    author: t.expose('author', { type: AuthorType, description: 'Who made it.' }),
    reason: t.exposeString('reason', { description: 'Why, in the words of its author.' }),
    at: t.string({ description: 'When (RFC 3339).', resolve: ({ at }) => at.toISOString() }),
    changedFields: t.field({
      type: [FieldChangeType],
      description:
        'Every field that differs; none where there was no category of your own before or afterwards.',
      resolve: async ({ number }, _args, { deps, sender }): Promise<readonly FieldChange[]> =>
        (await readOverlayRevision(deps, sender, number)).fields,
    }),
  }),
})
