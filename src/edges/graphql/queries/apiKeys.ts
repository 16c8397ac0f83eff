import { keyQuerySchema } from '../../../schemas/apiKey.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { countKeys, listKeys } from '../../../useCases/listKeys.ts'
import { KEY_LIST } from '../../accessLists.ts'
import { builder } from '../builder.ts'
import { connectionOf, listWindow } from '../listWindow.ts'
import { pageArgumentsSchema, pageCost } from '../pageArguments.ts'
import { ApiKeyType } from '../types/apiKey.ts'
import { withoutNulls } from '../withoutNulls.ts'

const filterSchema = keyQuerySchema.pick({ organisation: true })

builder.queryField('apiKeys', (t) =>
  t.connection(
    {
      type: ApiKeyType,
      nullable: true,
      description:
        "The API keys without their secrets, newest first, expired and revoked ones too: those of your organisation, or, for the operator's admins, of all. Needs a key with the scope admin.",
      args: {
        organisation: t.arg.string({ description: 'Only keys of the organisation with this code.' }),
      },
      complexity: pageCost,
      resolve: async (_root, { first, last, after, before, ...rest }, { deps, sender }) => {
        const page = readShape(pageArgumentsSchema, withoutNulls({ first, last, after, before }))
        const { filter, window } = listWindow(KEY_LIST, page, readShape(filterSchema, withoutNulls(rest)))
        const part = await listKeys(deps, sender, filter, window)
        return { ...connectionOf(KEY_LIST, part, filter), count: () => countKeys(deps, sender, filter) }
      },
    },
    {
      name: 'ApiKeyConnection',
      description: 'A page of keys.',
      fields: (connection) => ({
        totalCount: connection.int({
          description: 'Number of keys that the filter lets through, on all pages.',
          resolve: ({ count }) => count(),
        }),
      }),
    },
    { name: 'ApiKeyEdge', description: 'A key and its place in the list.' },
  ),
)
