import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { CATEGORY_COLUMNS } from '../../../../src/schemas/categoryColumns.ts'
import { expectProblem } from '../../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../../helpers/testApp.ts'
import { testCategories } from '../../../helpers/testCatalogue.ts'
import { editorOf } from './editor.ts'
import { fileOf, importerOf } from './importer.ts'

let service: TestApp
beforeEach(async () => (service = await testApp()))
afterEach(() => service.close())
const editor = editorOf(() => service)
const { send, sendDry } = importerOf(() => service)

const revisionNow = () => service.deps.catalogueMemory.current().revision
const exported = async (accept: string, query = '') =>
  service.send.get(`/v1/catalogue/export${query}`).set('accept', accept).expect(200)

describe('exports', () => {
  test('of JSON and CSV are imported again without any change', async () => {
    for (const accept of ['application/json', 'text/csv']) {
      const { text, headers } = await exported(accept)
      const body = accept === 'text/csv' ? text : JSON.parse(text)
      const answer = await send(body, { retireMissing: 'true' }, { 'if-match': headers['etag']! })
      expect(answer.status).toBe(200)
      expect(answer.body).toMatchObject({
        revision: null,
        changes: [],
        badRows: [],
        counts: { added: 0, changed: 0, retired: 0, restored: 0, unchanged: 7 },
      })
    }
    expect(revisionNow()).toBe(1)
  })

  test('fill another, empty catalogue with the same categories', async () => {
    for (const accept of ['application/json', 'text/csv']) {
      const { text } = await exported(accept)
      const other = await testApp({ categories: [] })
      const its = editorOf(() => other)
      const answer = await its.post('/v1/catalogue/imports', {
        body: text,
        headers: { 'content-type': accept, 'if-match': await its.tagOfCatalogue() },
      })
      expect(answer.status).toBe(201)
      expect([...other.deps.catalogueMemory.current().categories.values()]).toEqual(testCategories)
      await other.close()
    }
  })

  test('of CSV have a name, a header row, a tag of their own, and are sent once', async () => {
    const { headers, text } = await exported('text/csv, application/json;q=0.9')
    expect(headers).toMatchObject({
      'content-type': 'text/csv; charset=utf-8; header=present',
      'content-disposition': 'attachment; filename="catalogue-r1.csv"',
      etag: '"r1.csv1"',
      vary: 'accept',
    })
    expect(text.split('\r\n')[0]).toBe(CATEGORY_COLUMNS.join(','))
    await service.send
      .get('/v1/catalogue/export')
      .set({ accept: 'text/csv', 'if-none-match': headers['etag']! })
      .expect(304)
    await service.send
      .get('/v1/catalogue/export')
      .set({ accept: 'application/json', 'if-none-match': headers['etag']! })
      .expect(200)
  })

  test('give the catalogue of a past revision', async () => {
    const before = (await exported('text/csv')).text
    expect((await send(fileOf({}))).status).toBe(201)
    expect((await exported('text/csv', '?catalogueRevision=1')).text).toBe(before)
    expect((await exported('text/csv')).text).not.toBe(before)
  })

  test('of the list are what its filter lets through, as a whole', async () => {
    const list = await service.send.get('/v1/categories?group=audio').set('accept', 'text/csv').expect(200)
    expect(list.text.split('\r\n').map((line) => line.split(',')[0])).toEqual(['code', 'amplifier', ''])
    const paged = await service.send.get('/v1/categories?limit=2').set('accept', 'text/csv')
    expect(expectProblem(paged, 400, 'faulty-query')['errors']).toMatchObject([
      { in: 'query', pointer: '/limit', code: 'not-with-csv' },
    ])
  })

  test('neutralise what a spreadsheet would run, and imports take that away again', async () => {
    const name = '=HYPERLINK("http://example.org")'
    const headers = { 'if-match': await editor.tagOfCategory('freezer') }
    await editor.patch('/v1/categories/freezer', { body: { name }, headers })
    const { text } = await exported('text/csv')
    expect(text).toContain(`"'=HYPERLINK(""http://example.org"")"`)
    expect((await send(text)).body.counts).toMatchObject({ changed: 0, unchanged: 7 })
  })
})

describe('a dry run', () => {
  test('lists each addition, change, retirement and restoration, and stores nothing', async () => {
    const { text } = await exported('text/csv')
    const file = `${text
      .replace('Game console', 'Video game console')
      .replace(/^freezer.*\r\n/m, '')
      .replace(/^(cassette-deck,.*?),true,/m, '$1,false,')}${fileOf({}).split('\r\n')[1]}\r\n`
    const { body, status } = await sendDry(file, { retireMissing: 'true' })
    expect(status).toBe(200)
    expect(body).toMatchObject({
      dryRun: true,
      revision: null,
      catalogueRevision: 1,
      rows: 7,
      counts: { added: 1, changed: 1, retired: 1, restored: 1, unchanged: 4 },
      recognised: { delimiter: ',', decimal: '.' },
      badRows: [],
      changes: [
        {
          code: 'cassette-deck',
          kind: 'restored',
          fields: [{ pointer: '/retired', before: true, after: false }],
        },
        { code: 'freezer', kind: 'retired', fields: [{ pointer: '/retired', before: false, after: true }] },
        {
          code: 'game-console',
          kind: 'changed',
          fields: [{ pointer: '/name', before: 'Game console', after: 'Video game console' }],
        },
        { code: 'lava-lamp', name: 'Lava lamp', kind: 'added', fields: [] },
      ],
    })
    expect(revisionNow()).toBe(1)
  })

  test('leaves what the file does not speak of as it is, unless retireMissing says otherwise', async () => {
    expect((await sendDry(fileOf({}))).body.counts).toMatchObject({ added: 1, retired: 0 })
    expect((await sendDry(fileOf({}), { retireMissing: 'true' })).body.counts).toMatchObject({
      added: 1,
      retired: 6,
    })
  })

  test('lists every bad row with line, column and reason, beside what the rest would change', async () => {
    const file = fileOf(
      { lowW: 'two' },
      { code: 'glow-lamp', name: 'Glow lamp', aliases: 'TV' },
      { code: 'sun-lamp', name: 'Sun lamp', yearFrom: '2020', yearTo: '2010' },
      { code: 'sea-lamp', name: 'Sea lamp' },
    )
    const { body } = await sendDry(`${file}\r\nshort,line`)
    expect(
      body.badRows.map(({ line, column, code }: Record<string, string>) => `${line} ${column} ${code}`),
    ).toEqual([
      '2 lowW invalid-type',
      '4 yearTo years-upside-down',
      '6 null wrong-cell-count',
      '3 aliases name-taken',
    ])
    expect(body.badRowCount).toBe(4)
    expect(body.changes.map(({ code }: { code: string }) => code)).toEqual(['glow-lamp', 'sea-lamp'])
  })

  test('needs neither reason nor If-Match, but one that is given must hold', async () => {
    const path = '/v1/catalogue/imports'
    const headers = { 'content-type': 'text/csv' }
    const bare = await editor.post(path, { body: fileOf({}), query: { dryRun: 'true' }, headers })
    expect(bare.status).toBe(200)
    expectProblem(await sendDry(fileOf({}), {}, { 'if-match': '"r7.json2"' }), 412, 'stale-revision')
  })

  test('of JSON names bad members by pointer', async () => {
    const [amplifier, deck] = testCategories
    const { body } = await sendDry([
      { ...amplifier, colour: 'red' },
      { ...deck, powerFactor: { low: 0.9, typical: 0.5, high: 0.6 } },
      { ...amplifier, code: 'lava-lamp', name: 'Router', aliases: [] },
      deck,
      7,
    ])
    expect(body.recognised).toBeNull()
    expect(body.badRows.map(({ pointer, code }: Record<string, string>) => `${pointer} ${code}`)).toEqual([
      '/0/colour unknown-field',
      '/1/powerFactor/low range-out-of-order',
      '/3/code code-repeated',
      '/4 invalid-type',
      '/2/name name-taken',
    ])
  })
})

describe('an import', () => {
  test('is one revision, with its reason and all of its changes', async () => {
    const answer = await send(fileOf({}, { code: 'sea-lamp', name: 'Sea lamp' }), {
      reason: 'Spring campaign',
    })
    expect(answer.status).toBe(201)
    expect(answer.headers).toMatchObject({ location: '/v1/catalogue/revisions/2', etag: '"r2.json2"' })
    expect(answer.body).toMatchObject({ dryRun: false, counts: { added: 2 }, revision: { number: 2 } })
    expect(await editor.newest()).toMatchObject({
      action: 'import',
      reason: 'Spring campaign',
      changeCount: 2,
    })
  })

  test('with any bad row stores nothing, and names them all', async () => {
    const answer = await send(fileOf({ lowW: '9', source: 'x' }, { code: 'sea-lamp', name: 'Sea lamp' }))
    const problem = expectProblem(answer, 422, 'faulty-import')
    expect(problem).toMatchObject({
      badRowCount: 2,
      recognised: { delimiter: ',', decimal: '.' },
      badRows: [
        { line: 2, column: 'lowW', pointer: null, code: 'range-out-of-order' },
        { line: 2, column: 'source', pointer: null, code: 'sample-with-citation' },
      ],
    })
    expect(revisionNow()).toBe(1)
  })

  test('needs a reason and the newest revision', async () => {
    const path = '/v1/catalogue/imports'
    const sent = { body: fileOf({}), headers: { 'content-type': 'text/csv' } }
    expectProblem(await editor.post(path, { ...sent, query: {} }), 400, 'faulty-query')
    expectProblem(await editor.post(path, sent), 428, 'precondition-required')
    expectProblem(await send(fileOf({}), {}, { 'if-match': '"television.r1.json2"' }), 412, 'stale-revision')
    expect(revisionNow()).toBe(1)
  })

  test('of figures that change very much is refused with all of them, and taken with confirm=true', async () => {
    const changed = testCategories.map((category) =>
      category.code === 'router'
        ? {
            ...category,
            modes: category.modes.map((mode) => ({ ...mode, draws: [{ ...mode.draws[0], lowW: 1 }] })),
          }
        : category,
    )
    expect(expectProblem(await send(changed), 409, 'large-change')['changes']).toMatchObject([
      { category: 'router', figure: 'lowW', beforeW: 4, afterW: 1 },
    ])
    expect((await sendDry(changed)).body.largeChanges).toHaveLength(1)
    expect((await send(changed, { confirm: 'true' })).status).toBe(201)
  })

  test('gives two categories one name only if both are refused', async () => {
    const answer = await send(fileOf({}, { code: 'sea-lamp', name: 'Lava-Lamp' }))
    expect(
      (expectProblem(answer, 422, 'faulty-import')['badRows'] as { line: number; column: string }[]).map(
        ({ line, column }) => `${line} ${column}`,
      ),
    ).toEqual(['2 code', '2 name', '3 name'])
  })

  test('may move a name from one category to another', async () => {
    const moved = testCategories.map((category) => ({
      ...category,
      aliases:
        category.code === 'television'
          ? ['TV']
          : category.code === 'set-top-box'
            ? ['TV box', 'telly']
            : category.aliases,
    }))
    expect((await send(moved)).status).toBe(201)
    expect((await service.send.get('/v1/categories/telly')).body.code).toBe('set-top-box')
  })
})
