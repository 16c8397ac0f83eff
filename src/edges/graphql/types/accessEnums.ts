import type { KeyKind, KeyState } from '../../../core/access/apiKey.ts'
import type { Scope } from '../../../core/access/caller.ts'
import { enumOf } from '../enumOf.ts'

export const ScopeEnum = enumOf<Scope>('Scope', 'What a key may do.', {
  estimate: 'Estimate, where the operator gives no estimates to callers without a key.',
  intake: 'Send in inventories.',
  'catalogue:edit': 'Edit the catalogue.',
  admin: 'All of it, and manage keys and read the audit trail, within the organisation.',
})

export const KeyKindEnum = enumOf<KeyKind>('KeyKind', 'Who can know a key.', {
  secret: 'For a program that can keep a secret.',
  publishable: 'Stands in a website; good for estimates and the quiz alone, and from its origins alone.',
})

export const KeyStateEnum = enumOf<KeyState>('KeyState', 'What a key is good for now.', {
  active: 'It is valid.',
  expired: 'Its time has passed.',
  revoked: 'It was ended.',
})
