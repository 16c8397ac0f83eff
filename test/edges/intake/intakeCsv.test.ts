import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { expectProblem } from '../../helpers/expectProblem.ts'
import { household, type IntakeClient, intakeClient } from './intakeClient.ts'

let client: IntakeClient
beforeAll(async () => {
  client = await intakeClient()
})
afterAll(() => client.app.close())

describe('a batch in CSV', () => {
  const CSV = 'text/csv'
  const header =
    'reference,date,annualUseKwh,television,router,television.standby.watts,television.standby.hoursPerWeek'

  test('is what the same households are in NDJSON', async () => {
    const csv = `\uFEFF${header}\r\nc1,2026-01-10,3200.5,2,1,0.8,100\r\n"c2",,,1,0,,\r\n`
    const modes = [{ mode: 'standby', hoursPerWeek: 100, reading: { kind: 'power', watts: 0.8 } }]
    const ndjson = [
      '{}',
      household('c1', {
        date: '2026-01-10',
        annualUseKwh: 3200.5,
        devices: [
          { category: 'television', quantity: 2, modes },
          { category: 'router', quantity: 1 },
        ],
      }),
      household('c2', { devices: [{ category: 'television', quantity: 1 }] }),
    ].join('\n')
    expect(await client.take(csv, '', CSV)).toEqual(await client.take(ndjson, '?after=1'))
  })

  test('may have semicolons and decimal commas', async () => {
    const german = `${header.replaceAll(',', ';')}\nc1;;3200,5;1;;0,8;\n`
    const english = `${header}\nc1,,3200.5,1,,0.8,\n`
    expect(await client.take(german, '', CSV)).toEqual(await client.take(english, '', CSV))
  })

  test('is refused with every unknown column at once, before anything is answered', async () => {
    const answer = await client.app.send
      .post('/v1/intake-batches')
      .set({ ...client.own, 'content-type': CSV })
      .send('reference,televisoin,reference,television.sleeping.watts\n')
    expectProblem(answer, 422, 'faulty-input')
    expect(answer.body.errors.map(({ code }: { code: string }) => code)).toEqual([
      'unknown-column',
      'duplicate-column',
      'unknown-column',
    ])
  })

  test('answers a row that cannot be read as one problem, and goes on', async () => {
    const csv = `reference,television\nok,1\n"open,1\nshort\nwords,many\n=1+1,1\nok2,1\n`
    const lines = await client.take(csv, '', CSV)
    const codes = lines.map(({ line, status, errors }) => [
      line ?? status,
      (errors as { code: string }[] | undefined)?.[0]?.code,
    ])
    expect(codes).toEqual([
      [2, undefined],
      [3, 'malformed-row'],
      [4, 'wrong-number-of-cells'],
      [5, 'invalid-type'],
      [6, 'invalid-format'],
      [7, undefined],
      ['done', undefined],
    ])
  })
})
