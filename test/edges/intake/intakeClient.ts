import { bearer, issueTestKey } from '../../helpers/keys.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

type Headers = Record<string, string>
export type AnswerLine = Record<string, unknown>

export const NDJSON = 'application/x-ndjson'

/** Sends a batch, and gives the lines of its answer. */
export async function sendBatch(
  { send }: TestApp,
  text: string,
  {
    query = '',
    type = NDJSON,
    as,
  }: { readonly query?: string; readonly type?: string; readonly as: Headers },
): Promise<AnswerLine[]> {
  const answer = await send
    .post(`/v1/intake-batches${query}`)
    .set({ ...as, 'content-type': type })
    .buffer(true)
    .parse((response, done) => {
      let all = ''
      response.setEncoding('utf8')
      response.on('data', (piece: string) => (all += piece))
      response.on('end', () => done(null, all))
    })
    .send(text)
  if (answer.status !== 200) throw new Error(`Answered ${answer.status}: ${String(answer.body)}`)
  if (answer.headers['content-type'] !== 'application/x-ndjson; charset=utf-8')
    throw new Error(`Answered as ${answer.headers['content-type']}`)
  return String(answer.body)
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as AnswerLine)
}

/** An app with the keys of two organisations. */
export async function intakeClient() {
  const app = await testApp()
  const keyOf = async (organisation: string): Promise<Headers> =>
    bearer((await issueTestKey(app, { scopes: ['intake'], organisation })).key)
  const own = await keyOf('own')
  return {
    app,
    own,
    other: await keyOf('other'),
    take: (text: string, query = '', type = NDJSON, as = own) => sendBatch(app, text, { query, type, as }),
  }
}
export type IntakeClient = Awaited<ReturnType<typeof intakeClient>>

/** A line of NDJSON. */
export const household = (reference: string, fields: object = {}) =>
  JSON.stringify({ reference, devices: [{ category: 'television' }], ...fields })
