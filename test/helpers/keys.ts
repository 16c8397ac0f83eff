import type { Scope } from '../../src/core/access/caller.ts'
import { ADMIN_KEY, type TestApp } from './testApp.ts'

export const bearer = (key: string) => ({ authorization: `Bearer ${key}` })
export const asAdmin = bearer(ADMIN_KEY)

interface Wanted {
  readonly scopes?: readonly Scope[]
  readonly organisation?: string
  readonly kind?: 'secret' | 'publishable'
  readonly origins?: readonly string[]
  readonly expiresAt?: string
}

export interface TestKey {
  readonly id: string
  readonly key: string
}

/** Issues a key over REST, as the operator's admin does; its organisation is made where it is not there yet. */
export async function issueTestKey({ send }: TestApp, wanted: Wanted): Promise<TestKey> {
  const { organisation } = wanted
  if (organisation !== undefined) {
    const made = await send
      .post('/v1/organisations')
      .set(asAdmin)
      .send({ code: organisation, name: organisation })
    if (![201, 409].includes(made.status)) throw new Error(`Answered ${made.status}: ${made.text}`)
  }
  const answer = await send
    .post('/v1/api-keys')
    .set(asAdmin)
    .send({ name: 'A key for a test', ...wanted })
  if (answer.status !== 201) throw new Error(`Answered ${answer.status}: ${answer.text}`)
  return answer.body as TestKey
}
