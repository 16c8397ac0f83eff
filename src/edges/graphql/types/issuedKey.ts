import type { IssuedKey } from '../../../useCases/issueKey.ts'
import { builder } from '../builder.ts'
import { ApiKeyType } from './apiKey.ts'

export const IssuedKeyType = builder.objectRef<IssuedKey>('IssuedApiKey').implement({
  description: 'A new API key. The key itself is shown this once, and stored nowhere.',
  fields: (t) => ({
    apiKey: t.field({ type: ApiKeyType, description: 'What is known of it.', resolve: ({ key }) => key }),
    key: t.exposeString('text', { description: 'The key itself.' }),
  }),
})
