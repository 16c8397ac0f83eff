import { keyRequestSchema } from '../../../schemas/apiKey.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { issueKey } from '../../../useCases/issueKey.ts'
import { builder } from '../builder.ts'
import { KeyKindEnum, ScopeEnum } from '../types/accessEnums.ts'
import { IssuedKeyType } from '../types/issuedKey.ts'
import { mutationResult, orUserError } from '../types/userErrors.ts'
import { withoutNulls } from '../withoutNulls.ts'

const IssueApiKeyInput = builder.inputType('IssueApiKeyInput', {
  description: 'What is said of a new key.',
  fields: (t) => ({
    name: t.string({ required: true, description: 'What people call it, such as the program that uses it.' }),
    organisation: t.string({ description: 'Code of the organisation that it is for; your own by default.' }),
    kind: t.field({ type: KeyKindEnum, description: 'Who can know it; SECRET by default.' }),
    scopes: t.field({
      type: [ScopeEnum],
      description: 'What it may do. A secret key needs at least one; a publishable one has ESTIMATE.',
    }),
    origins: t.stringList({ description: 'Origins that a publishable key is for.' }),
    expiresAt: t.string({ description: 'When it ends (RFC 3339); never by default.' }),
  }),
})

const Result = mutationResult('IssueApiKeyResult', 'The new key, or why there is none.', IssuedKeyType)

builder.mutationField('issueApiKey', (t) =>
  t.field({
    type: Result,
    nullable: true,
    description: 'Issues an API key. Needs a key with the scope admin.',
    args: { input: t.arg({ type: IssueApiKeyInput, required: true, description: 'The new key.' }) },
    resolve: (_root, { input }, { deps, sender }) =>
      orUserError(() => issueKey(deps, sender, readShape(keyRequestSchema, withoutNulls(input)))),
  }),
)
