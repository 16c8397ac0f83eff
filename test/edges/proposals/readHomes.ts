import { bearer, issueTestKey } from '../../helpers/keys.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

type Headers = Record<string, string>
export interface ReadDevice {
  readonly watts: number
  readonly category?: string
  readonly year?: number
  readonly quantity?: number
}

/** Twelve invented readings of amplifiers, W; the largest stands far from the others. */
export const READINGS_W = [0.9, 1.1, 1.2, 1.4, 1.5, 1.6, 1.7, 1.8, 2, 2.2, 2.4, 30]

/** An app, the keys of two programmes and of the operator's editor, and what tests do with homes that were read. */
export async function readHomes() {
  const app: TestApp = await testApp()
  let made = 0
  const keyOf = async (organisation: string | undefined, scope: 'intake' | 'catalogue:edit') =>
    bearer((await issueTestKey(app, { scopes: [scope], ...(organisation && { organisation }) })).key)
  const first = await keyOf('first-programme', 'intake')
  const second = await keyOf('second-programme', 'intake')
  const editor = await keyOf(undefined, 'catalogue:edit')
  const home = (devices: readonly ReadDevice[], as: Headers = first) =>
    app.send
      .post('/v1/inventories')
      .set(as)
      .send({
        reference: `H-${++made}`,
        visits: [
          {
            date: '2026-01-15',
            devices: devices.map(({ watts, category = 'amplifier', ...rest }) => ({
              category,
              ...rest,
              modes: [{ mode: 'standby', reading: { kind: 'power', watts } }],
            })),
          },
        ],
      })
      .expect(201)
  const PATH = '/v1/catalogue/proposals'
  return {
    app,
    home,
    second,
    editor,
    keyOf,
    PATH,
    amplifier: `${PATH}/amplifier/standby/all`,
    /** One home for each reading, in turns of two organisations. */
    homes: async (watts: readonly number[], category = 'amplifier') => {
      for (const [i, each] of watts.entries())
        await home([{ watts: each, category }], i % 2 === 0 ? first : second)
    },
    get: (path: string, as: Headers = editor) => app.send.get(path).set(as),
    post: (path: string, query: object, headers: Headers = {}, as: Headers = editor) =>
      app.send
        .post(path)
        .query(query)
        .set({ ...as, ...headers }),
  }
}
