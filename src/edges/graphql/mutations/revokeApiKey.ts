import type { ApiKey } from '../../../core/access/apiKey.ts'
import { revokeKey } from '../../../useCases/revokeKey.ts'
import { builder } from '../builder.ts'
import { ApiKeyType } from '../types/apiKey.ts'
import { mutationResult, orUserError } from '../types/userErrors.ts'

const RevokedType = builder.objectRef<{ readonly key: ApiKey }>('RevokedApiKey').implement({
  description: 'A key that is revoked.',
  fields: (t) => ({
    apiKey: t.field({ type: ApiKeyType, description: 'The key.', resolve: ({ key }) => key }),
  }),
})

const Result = mutationResult('RevokeApiKeyResult', 'The revoked key, or why it is not revoked.', RevokedType)

builder.mutationField('revokeApiKey', (t) =>
  t.field({
    type: Result,
    nullable: true,
    description:
      'Revokes an API key for good, at once; where several processes serve, within a second in all of them. Revoking it again changes nothing. Needs a key with the scope admin.',
    args: { keyId: t.arg.string({ required: true, description: '`keyId` of the key.' }) },
    resolve: (_root, { keyId }, { deps, sender }) =>
      orUserError(async () => ({ key: await revokeKey(deps, sender, keyId) })),
  }),
)
