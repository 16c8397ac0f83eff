import { rotationSchema } from '../../../schemas/apiKey.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { rotateKey } from '../../../useCases/rotateKey.ts'
import { builder } from '../builder.ts'
import { IssuedKeyType } from '../types/issuedKey.ts'
import { mutationResult, orUserError } from '../types/userErrors.ts'
import { withoutNulls } from '../withoutNulls.ts'

const Result = mutationResult('RotateApiKeyResult', 'The successor, or why there is none.', IssuedKeyType)

builder.mutationField('rotateApiKey', (t) =>
  t.field({
    type: Result,
    nullable: true,
    description:
      'Issues the successor of an API key, which may do the same; the key itself stays valid for the overlap. Needs a key with the scope admin.',
    args: {
      keyId: t.arg.string({ required: true, description: '`keyId` of the key.' }),
      overlapHours: t.arg.float({
        description: 'How long the key stays valid beside its successor, h: 0 to 720, 24 by default.',
      }),
      expiresAt: t.arg.string({
        description:
          'When the successor ends (RFC 3339); by default it gets as long a term as the key was issued with.',
      }),
    },
    resolve: (_root, { keyId, ...rotation }, { deps, sender }) =>
      orUserError(() => rotateKey(deps, sender, keyId, readShape(rotationSchema, withoutNulls(rotation)))),
  }),
)
