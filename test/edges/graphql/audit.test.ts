import { serverAudits } from 'graphql-http'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { testApp, type TestApp } from '../../helpers/testApp.ts'

/**
 * What the GraphQL-over-HTTP specification recommends and is not done here. Its clients of the time before it
 * expect 200 for requests that cannot be carried out; 400 is what every HTTP tool understands, and what the
 * specification itself asks of application/graphql-response+json.
 */
const ACCEPTED: Readonly<Record<string, string>> = {
  '572B': '400 instead of 200 on a document that cannot be parsed, with application/json',
  FDE2: '400 instead of 200 on a document that is not valid, with application/json',
  '7B9B': '400 instead of 200 on variables that do not fit, with application/json',
}

let app: TestApp
beforeAll(async () => {
  app = await testApp()
})
afterAll(() => app.close())

/** Sends what a well-behaved client sends, so that its GETs are not taken for those of another site's page. */
const fetchWithPreflight: typeof fetch = (input, init) => {
  const headers = new Headers(init?.headers)
  headers.set('apollo-require-preflight', '1')
  return fetch(input, { ...init, headers })
}

const audits = serverAudits({ url: () => `${app.url}/graphql`, fetchFn: fetchWithPreflight })

test.each(audits.map((audit) => [audit.id, audit.name, audit] as const))(
  'GraphQL over HTTP %s: %s',
  async (id, _name, audit) => {
    const result = await audit.fn()
    const reason = 'reason' in result ? result.reason : ''
    expect({ status: result.status, reason }).toMatchObject(
      id in ACCEPTED ? { status: 'warn' } : { status: 'ok', reason: '' },
    )
  },
)

test('the suite of audits is the whole one', () => {
  expect(audits.length).toBeGreaterThanOrEqual(60)
  expect(audits.filter(({ id }) => id in ACCEPTED)).toHaveLength(Object.keys(ACCEPTED).length)
})
