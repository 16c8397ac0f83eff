import type { Response } from 'supertest'
import { bearer, issueTestKey } from '../../../helpers/keys.ts'
import type { TestApp } from '../../../helpers/testApp.ts'

export type Headers = Readonly<Record<string, string>>

/** A category of its own as an organisation sends it, with figures that come from its readings. */
export const ownTelevision = {
  code: 'television',
  name: 'Television',
  group: 'video',
  aliases: ['TV', 'telly'],
  defaultQuantity: 1,
  keepPowered: null,
  powerFactor: { low: 0.4, typical: 0.5, high: 0.6 },
  modes: [
    {
      mode: 'standby',
      defaultHoursPerWeek: 140,
      draws: [
        {
          yearFrom: null,
          yearTo: null,
          lowW: 0.9,
          typicalW: 2,
          highW: 4,
          provenance: { kind: 'programme', citation: null, n: 42 },
        },
      ],
    },
  ],
}

export const own = (code: string) => ({ ...ownTelevision, code, name: `Our ${code}`, aliases: [] })

/** The headers of an editor of an organisation, which is made where it is not there yet. */
export const editorOf = async (service: TestApp, organisation: string): Promise<Headers> =>
  bearer((await issueTestKey(service, { scopes: ['catalogue:edit'], organisation })).key)

/** The headers of a caller of an organisation that may ask for estimates, and edit nothing. */
export const callerOf = async (service: TestApp, organisation: string): Promise<Headers> =>
  bearer((await issueTestKey(service, { scopes: ['estimate'], organisation })).key)

interface Sent {
  readonly body?: object
  readonly query?: Readonly<Record<string, string>>
  readonly headers?: Headers
}

const NEW = { 'if-none-match': '*' }

/** Lays a category over the shared catalogue; where nothing is said, as one that there is none of yet. */
export const lay = (
  { send }: TestApp,
  as: Headers,
  code: string,
  { body = { ...ownTelevision, code }, query = {}, headers = NEW }: Sent = {},
): Promise<Response> =>
  send
    .put(`/v1/overlay/categories/${code}`)
    .query({ reason: 'a test', ...query })
    .set({ ...as, ...headers })
    .send(body)
    .then((answer) => answer)

export const change = (
  { send }: TestApp,
  as: Headers,
  code: string,
  { body = {}, query = {}, headers = NEW }: Sent = {},
): Promise<Response> =>
  send
    .patch(`/v1/overlay/categories/${code}`)
    .query({ reason: 'a test', ...query })
    .set({ ...as, 'content-type': 'application/merge-patch+json', ...headers })
    .send(JSON.stringify(body))
    .then((answer) => answer)

export const remove = ({ send }: TestApp, as: Headers, code: string, headers: Headers): Promise<Response> =>
  send
    .delete(`/v1/overlay/categories/${code}`)
    .query({ reason: 'a test' })
    .set({ ...as, ...headers })
    .then((answer) => answer)

export const tagOf = async ({ send }: TestApp, as: Headers, code: string): Promise<string> =>
  (await send.get(`/v1/overlay/categories/${code}`).set(as).expect(200)).headers['etag']!
