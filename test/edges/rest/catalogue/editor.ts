import type { Response } from 'supertest'
import type { Category } from '../../../../src/core/catalogue/category.ts'
import { ADMIN_KEY, type TestApp } from '../../../helpers/testApp.ts'

/** What an edit may carry besides its address. */
export interface Sent {
  readonly body?: unknown
  readonly query?: Readonly<Record<string, string | boolean>>
  readonly headers?: Readonly<Record<string, string>>
}

/** Sends requests as an editor does: with a key, and with a reason unless the test gives another query. */
export function editorOf(service: () => TestApp) {
  const send = async (
    method: 'post' | 'put' | 'patch' | 'delete' | 'get',
    path: string,
    { body, query = { reason: 'a test' }, headers = {} }: Sent = {},
  ): Promise<Response> => {
    const request = service()
      .send[method](path)
      .query(query)
      .set({ authorization: `Bearer ${ADMIN_KEY}`, ...headers })
    if (typeof body === 'string' || Buffer.isBuffer(body)) return request.send(body)
    return body === undefined ? request : request.send(JSON.stringify(body))
  }
  const tagOf = async (path: string) => (await service().send.get(path).expect(200)).headers['etag']!
  return {
    send,
    /** The tag that an edit of a category, or of the catalogue as a whole, is based on. */
    tagOfCategory: (code: string) => tagOf(`/v1/categories/${code}`),
    tagOfCatalogue: () => tagOf('/v1/catalogue/export'),
    post: (path: string, sent: Sent = {}) =>
      send('post', path, {
        ...sent,
        headers: { ...(sent.body !== undefined && { 'content-type': 'application/json' }), ...sent.headers },
      }),
    put: (path: string, sent: Sent = {}) =>
      send('put', path, { ...sent, headers: { 'content-type': 'application/json', ...sent.headers } }),
    patch: (path: string, sent: Sent = {}) =>
      send('patch', path, {
        ...sent,
        headers: { 'content-type': 'application/merge-patch+json', ...sent.headers },
      }),
    retire: (path: string, sent: Sent = {}) => send('delete', path, sent),
    /** The newest revision with its changes. */
    newest: async () => {
      const { body } = await service().send.get('/v1/catalogue/revisions?limit=1').expect(200)
      const { number } = body.items[0] as { number: number }
      return (await service().send.get(`/v1/catalogue/revisions/${number}`).expect(200)).body
    },
  }
}

/** The bodies of all pages of a list, by way of the Link headers; each says whether it is the last as its header does. */
export async function pagesOf(service: TestApp, from: string): Promise<Response['body'][]> {
  const pages: Response['body'][] = []
  let path: string | undefined = from
  while (path !== undefined) {
    const answer: Response = await service.send.get(path).expect(200)
    pages.push(answer.body)
    path = /^<([^>]+)>; rel="next"$/.exec(answer.headers['link'] ?? '')?.[1]
    if ((path === undefined) !== (answer.body.nextCursor === null))
      throw new Error('Link and nextCursor do not say the same.')
  }
  return pages
}

/** A category as an editor sends a new one, whose state of retirement is not for the editor to say. */
export function withoutRetired(category: Category): Omit<Category, 'retired'> {
  const fields = Object.entries(category).filter(([name]) => name !== 'retired')
  return Object.fromEntries(fields) as unknown as Omit<Category, 'retired'>
}
