import { exampleContent, followUp } from '../../../src/edges/rest/inventories/requestExamples.ts'
import { bearer, issueTestKey } from '../../helpers/keys.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

type Headers = Record<string, string>

/** An app with the keys of two organisations, and what tests do with households of the first of them. */
export async function inventoryClient() {
  let now = new Date('2026-01-31T12:00:00Z')
  let made = 0
  const app: TestApp = await testApp({ clock: () => now })
  const keyOf = async (organisation: string): Promise<Headers> =>
    bearer((await issueTestKey(app, { scopes: ['intake'], organisation })).key)
  const own = await keyOf('own')
  const content = (fields: object = {}) => ({ ...exampleContent, reference: `H-${++made}`, ...fields })
  return {
    app,
    send: app.send,
    own,
    other: await keyOf('other'),
    keyOf,
    now: () => now,
    laterBy: (ms: number) => (now = new Date(now.getTime() + ms)),
    content,
    create: async (fields: object = {}, as = own) =>
      (await app.send.post('/v1/inventories').set(as).send(content(fields)).expect(201)).body,
    tagOf: async (id: string) =>
      (await app.send.get(`/v1/inventories/${id}`).set(own).expect(200)).headers['etag']!,
    patch: (id: string, tag: string, changes: object) =>
      app.send
        .patch(`/v1/inventories/${id}`)
        .set({ ...own, 'if-match': tag, 'content-type': 'application/merge-patch+json' })
        .send(JSON.stringify(changes)),
    addVisit: (id: string, visit: object = followUp, headers: Headers = {}) =>
      app.send
        .post(`/v1/inventories/${id}/visits`)
        .set({ ...own, ...headers })
        .send(visit),
  }
}
export type InventoryClient = Awaited<ReturnType<typeof inventoryClient>>
