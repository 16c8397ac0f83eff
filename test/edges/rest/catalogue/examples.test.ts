import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { CATALOGUE_REQUEST_EXAMPLES } from '../../../../src/edges/rest/catalogue/examples.ts'
import { type TestApp, testApp } from '../../../helpers/testApp.ts'
import { editorOf } from './editor.ts'

let service: TestApp
beforeAll(async () => (service = await testApp()))
afterAll(() => service.close())
const editor = editorOf(() => service)

interface Operation {
  readonly operationId: string
  readonly responses: Readonly<Record<string, unknown>>
  readonly requestBody?: { readonly content: Readonly<Record<string, object>> }
  readonly parameters?: readonly { readonly name: string; readonly in: string }[]
  readonly security?: object
}
const operationsOf = async (): Promise<Operation[]> => {
  const { body } = await service.send.get('/openapi.json').expect(200)
  return Object.values(body.paths as Record<string, Record<string, Operation>>).flatMap((item) =>
    Object.values(item),
  )
}

describe('the examples of edits in the API description', () => {
  test('are taken by the service, one after the other', async () => {
    const { createCategory, replaceCategory, patchCategory, importCatalogue } = CATALOGUE_REQUEST_EXAMPLES
    const made = await editor.post('/v1/categories', { body: createCategory.lamp.value })
    expect(made.status).toBe(201)
    const replaced = await editor.put('/v1/categories/lava-lamp', {
      body: replaceCategory.alias.value,
      headers: { 'if-match': made.headers['etag']! },
    })
    expect([replaced.status, replaced.body.aliases]).toEqual([200, ['wax lamp', 'bubble lamp']])
    const patched = await editor.patch('/v1/categories/lava-lamp', {
      body: patchCategory.alias.value,
      headers: { 'if-match': replaced.headers['etag']! },
    })
    expect([patched.status, patched.headers['etag']]).toEqual([200, replaced.headers['etag']])
    const imported = await editor.post('/v1/catalogue/imports', {
      body: importCatalogue.list.value,
      headers: { 'if-match': await editor.tagOfCatalogue() },
    })
    expect([imported.status, imported.body.counts.changed]).toEqual([201, 1])
  })
})

describe('the description of edits', () => {
  test.each([
    ['createCategory', ['reason'], ['application/json'], [201, 401, 403, 409, 413, 415, 422]],
    [
      'replaceCategory',
      ['confirm', 'reason', 'If-Match', 'If-None-Match'],
      ['application/json'],
      [200, 201, 404, 409, 412, 428],
    ],
    [
      'patchCategory',
      ['confirm', 'reason', 'If-Match'],
      ['application/merge-patch+json'],
      [200, 404, 409, 412, 415, 428],
    ],
    ['retireCategory', ['reason', 'If-Match'], [], [200, 404, 412, 428]],
    ['restoreCategory', ['reason', 'If-Match'], [], [200, 404, 412, 422, 428]],
    ['restoreRevision', ['confirm', 'reason', 'If-Match'], [], [200, 201, 404, 409, 412, 428]],
    [
      'importCatalogue',
      ['confirm', 'decimal', 'delimiter', 'dryRun', 'reason', 'retireMissing', 'If-Match'],
      ['text/csv', 'application/json'],
      [200, 201, 409, 412, 413, 415, 422, 428],
    ],
  ])('%s: parameters, bodies and statuses', async (operationId, parameters, bodies, statuses) => {
    const operation = (await operationsOf()).find((one) => one.operationId === operationId)!
    const named = (operation.parameters ?? []).filter((one) => one.in !== 'path').map(({ name }) => name)
    expect(named.sort()).toEqual(parameters.toSorted())
    expect(Object.keys(operation.requestBody?.content ?? {}).sort()).toEqual(bodies.toSorted())
    expect(Object.keys(operation.responses)).toEqual(expect.arrayContaining(statuses.map(String)))
    expect(operation.security).toEqual([{ key: ['catalogue:edit'] }])
  })

  test.each([
    'listRevisions',
    'readRevision',
    'listRevisionCategories',
    'compareRevisions',
    'exportCatalogue',
  ])('%s is open to all', async (operationId) => {
    const operation = (await operationsOf()).find((one) => one.operationId === operationId)!
    expect(operation.security).toBeUndefined()
  })
})
