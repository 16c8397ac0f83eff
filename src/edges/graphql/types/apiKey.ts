import type { ApiKey } from '../../../core/access/apiKey.ts'
import { showKey } from '../../../schemas/apiKey.ts'
import { readApiKey } from '../../../useCases/readApiKey.ts'
import { builder } from '../builder.ts'
import { nodeOrNull } from '../nodeOrNull.ts'
import { KeyKindEnum, KeyStateEnum, ScopeEnum } from './accessEnums.ts'

const time = (at: Date | null) => at?.toISOString() ?? null

export const ApiKeyType = builder.node(builder.objectRef<ApiKey>('ApiKey'), {
  description: 'An API key without its secret.',
  id: { description: 'Opaque name of the key, unique in the whole service.', resolve: ({ id }) => id },
  loadOne: (id, { deps, sender }) => nodeOrNull(() => readApiKey(deps, sender, id)),
  fields: (t) => ({
    keyId: t.exposeString('id', {
      description:
        'What stands in the key between the two underlines; logs and the audit trail name it by this.',
    }),
    organisation: t.exposeString('organisation', {
      description: 'Code of the organisation that it belongs to.',
    }),
    kind: t.expose('kind', { type: KeyKindEnum, description: 'Who can know it.' }),
    name: t.exposeString('name', { description: 'What people call it.' }),
    scopes: t.field({
      type: [ScopeEnum],
      description: 'What it may do.',
      complexity: 1,
      resolve: ({ scopes }) => scopes,
    }),
    origins: t.stringList({
      description: 'Origins that a publishable key is good for; empty for a secret one.',
      complexity: 1,
      resolve: ({ origins }) => origins,
    }),
    state: t.field({
      type: KeyStateEnum,
      description: 'What it is good for now.',
      resolve: (key, _arguments, { deps }) => showKey(key, deps.clock()).state,
    }),
    bootstrap: t.exposeBoolean('bootstrap', {
      description: "Whether it is the key of the operator's setting BOOTSTRAP_ADMIN_KEY.",
    }),
    issuedAt: t.string({
      description: 'When it was issued (RFC 3339).',
      resolve: ({ issuedAt }) => issuedAt.toISOString(),
    }),
    issuedBy: t.exposeString('issuedBy', {
      nullable: true,
      description: '`keyId` of the key that it was issued with; null where the service issued it at a start.',
    }),
    rotatedFrom: t.exposeString('rotatedFrom', {
      nullable: true,
      description: '`keyId` of the key that it is the successor of.',
    }),
    expiresAt: t.string({
      nullable: true,
      description: 'When it ends (RFC 3339); null is never.',
      resolve: ({ expiresAt }) => time(expiresAt),
    }),
    revokedAt: t.string({
      nullable: true,
      description: 'When it was revoked (RFC 3339).',
      resolve: ({ revokedAt }) => time(revokedAt),
    }),
    lastUsedAt: t.string({
      nullable: true,
      description: 'When it was last used (RFC 3339), to the minute.',
      resolve: ({ lastUsedAt }) => time(lastUsedAt),
    }),
  }),
})
