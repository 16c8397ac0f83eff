import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { expectProblem } from '../../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../../helpers/testApp.ts'
import { editorOf } from './editor.ts'
import { fileOf, importerOf } from './importer.ts'

let service: TestApp
beforeEach(async () => (service = await testApp()))
afterEach(() => service.close())
const editor = editorOf(() => service)
const { send, sendDry } = importerOf(() => service)

const revisionNow = () => service.deps.catalogueMemory.current().revision
/** As a spreadsheet saves it where decimals have a comma. */
const withCommas = (file: string) => file.replaceAll(',', ';').replaceAll('.', ',')

describe('how a file is written', () => {
  test.each([
    ['commas and points', fileOf({}), { delimiter: ',', decimal: '.' }],
    ['semicolons and decimal commas', withCommas(fileOf({})), { delimiter: ';', decimal: ',' }],
    ['semicolons and points', fileOf({}).replaceAll(',', ';'), { delimiter: ';', decimal: '.' }],
    [
      'commas and quoted decimal commas',
      fileOf({}).replaceAll(/\b(\d)\.(\d)\b/g, '"$1,$2"'),
      { delimiter: ',', decimal: ',' },
    ],
    [
      'no fractions at all',
      fileOf({ powerFactorLow: '1', powerFactorTypical: '1', powerFactorHigh: '1', lowW: '1', highW: '2' }),
      { delimiter: ',', decimal: null },
    ],
  ])('with %s is recognised and said', async (_, file, recognised) => {
    for (const text of [file, `\uFEFF${file}`]) {
      const { body } = await sendDry(text)
      expect(body).toMatchObject({ recognised, badRows: [], counts: { added: 1 } })
    }
  })

  test('semicolons and decimal commas give the same category as commas and points', async () => {
    expect((await send(withCommas(fileOf({})))).status).toBe(201)
    expect((await sendDry(fileOf({}))).body.counts).toMatchObject({ added: 0, changed: 0, unchanged: 1 })
  })

  test.each([
    [
      'a header with both marks',
      fileOf({})
        .replace('name,group', 'name;group')
        .replace(/,(?=yearFrom)/, ';'),
      null,
    ],
    ['tabs', fileOf({}).replaceAll(',', '\t'), 'unknown-delimiter'],
    ['points and commas in figures', withCommas(fileOf({})).replace('0,5', '0.5'), 'ambiguous-decimal'],
    [
      'nothing but what may be thousands',
      fileOf({
        powerFactorLow: '1',
        powerFactorTypical: '1',
        powerFactorHigh: '1',
        lowW: '1.000',
        typicalW: '1.500',
        highW: '2.000',
      }).replaceAll(',', ';'),
      'ambiguous-decimal',
    ],
  ])('with %s is refused, with what to do', async (_, file, code) => {
    const problem = expectProblem(await send(file), 422, 'faulty-import')
    const [bad] = problem['badRows'] as { code: string; message: string; line: number }[]
    if (code !== null) expect(bad).toMatchObject({ code, message: expect.stringMatching(/Save|Say|Write/) })
    expect(revisionNow()).toBe(1)
  })

  test('what could be read in two ways is read as the caller says', async () => {
    const file = fileOf({
      powerFactorLow: '1',
      powerFactorTypical: '1',
      powerFactorHigh: '1',
      lowW: '1.000',
      typicalW: '1.500',
      highW: '2.000',
    }).replaceAll(',', ';')
    const answer = await send(file, { decimal: 'point', delimiter: 'semicolon' })
    expect(answer.body).toMatchObject({ recognised: { delimiter: ';', decimal: '.' }, counts: { added: 1 } })
    const { body } = await service.send.get('/v1/categories/lava-lamp')
    expect(body.modes[0].draws[0]).toMatchObject({ lowW: 1, typicalW: 1.5, highW: 2 })
  })

  test.each([
    ['Latin-1', Buffer.from(fileOf({ name: 'Lämpchen' }), 'latin1')],
    ['UTF-16', Buffer.from(`\uFEFF${fileOf({})}`, 'utf16le')],
  ])('in %s is refused as not UTF-8', async (_, bytes) => {
    const problem = expectProblem(await send(bytes), 422, 'faulty-import')
    expect(problem['badRows']).toMatchObject([{ line: 1, code: 'not-utf-8' }])
  })

  test('in UTF-8 keeps every letter', async () => {
    await send(fileOf({ name: 'Lämpchen 熱 🔌' }))
    expect((await service.send.get('/v1/categories/lava-lamp')).body.name).toBe('Lämpchen 熱 🔌')
  })

  test.each([
    ['another charset', fileOf({}), 'text/csv; charset=iso-8859-1'],
    ['another media type', fileOf({}), 'text/plain'],
    ['XML', '<x/>', 'application/xml'],
  ])('as %s is refused, with what is read here', async (_, body, type) => {
    const answer = await send(body, {}, { 'content-type': type })
    expectProblem(answer, 415, 'unsupported-media-type')
    expect(answer.headers['accept-post']).toBe('text/csv, application/json')
  })
})

describe('a large file', () => {
  test('is read up to a limit of its own, and other bodies are not', async () => {
    const small = await testApp({ importLimitBytes: 4_000, bodyLimitBytes: 1_500 })
    const its = editorOf(() => small)
    const post = async (path: string, bytes: number, type: string) =>
      its.post(path, {
        body: 'x'.repeat(bytes),
        headers: { 'content-type': type, 'if-match': await its.tagOfCatalogue() },
      })
    expectProblem(await post('/v1/catalogue/imports', 4_001, 'text/csv'), 413, 'body-too-large')
    expectProblem(await post('/v1/catalogue/imports', 4_000, 'text/csv'), 422, 'faulty-import')
    expectProblem(await post('/v1/categories', 1_501, 'application/json'), 413, 'body-too-large')
    await small.close()
  })

  test.each([
    ['one endless line', ','.repeat(70_000), 'line-too-long'],
    ['endless lines', 'x\n'.repeat(100_001), 'too-many-lines'],
  ])('of %s is refused before it is taken apart', async (_, text, code) => {
    const problem = expectProblem(await send(text), 422, 'faulty-import')
    expect(problem['badRows']).toMatchObject([{ code }])
  })

  test('of very many bad rows has the first thousand listed and all of them counted', async () => {
    const { body } = await sendDry(`${fileOf({})}\r\n${'bad,row\r\n'.repeat(3_000)}`)
    expect([body.badRows.length, body.badRowCount]).toEqual([1_000, 3_000])
  })

  test('of 10,000 categories is one revision, and the log tells how far it has come', async () => {
    const rows = Array.from({ length: 10_000 }, (_, index) => ({
      code: `lamp-${index}`,
      name: `Invented lamp ${index}`,
    }))
    const answer = await send(fileOf(...rows))
    expect(answer.status).toBe(201)
    expect(answer.body.counts.added).toBe(10_000)
    expect((await editor.newest()).changeCount).toBe(10_000)
    const lines = service
      .log()
      .split('\n')
      .filter((line) => line.includes('import:'))
      .map((line) => JSON.parse(line) as Record<string, unknown>)
    expect(lines[0]).toMatchObject({ rows: 10_000, badRowCount: 0, categories: 10_000 })
    expect(lines.at(-1)).toMatchObject({ done: 10_000, total: 10_000 })
  })
})
