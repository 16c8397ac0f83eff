import { Validator } from '@seriousme/openapi-schema-validator'
import { fastify } from 'fastify'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readConfig, settingsOf } from '../../../src/config.ts'
import {
  exampleCategory,
  exampleCategoryList,
  exampleEstimate,
  REQUEST_EXAMPLES,
} from '../../../src/edges/rest/examples.ts'
import { registerRest } from '../../../src/edges/rest/index.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

interface Operation {
  readonly operationId: string
  readonly summary?: string
  readonly description?: string
  readonly tags?: readonly string[]
  readonly responses: Readonly<Record<string, { content?: Record<string, { examples?: object }> }>>
}
interface Document {
  readonly openapi: string
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>
  readonly components: { readonly schemas: object }
}

let service: TestApp
let document: Document
beforeAll(async () => {
  const seed = await readSeed()
  service = await testApp({ categories: seed.categories, settings: settingsOf(readConfig({}), seed) })
  document = (await service.send.get('/openapi.json').expect(200)).body
})
afterAll(() => service.close())

const operations = () =>
  Object.entries(document.paths).flatMap(([path, item]) =>
    Object.entries(item).map(([method, operation]) => ({ path, method, ...operation })),
  )

describe('/openapi.json', () => {
  test('is valid OpenAPI 3.1', async () => {
    expect(document.openapi).toMatch(/^3\.1\./)
    expect(await new Validator().validate({ ...structuredClone(document) })).toMatchObject({ valid: true })
  })

  test('describes every REST route, and no other', async () => {
    const routes: string[] = []
    const bare = fastify()
    bare.addHook('onRoute', ({ method, url }) => {
      routes.push(`${String(method)} ${url.replace(/:(\w+)/g, '{$1}')}`)
    })
    const context = { deps: service.deps, anonymousEstimates: true, checkStore: async () => undefined }
    await registerRest(bare, context, false)
    const described = operations().map(({ path, method }) => `${method.toUpperCase()} ${path}`)
    expect(described.sort()).toEqual(routes.filter((route) => !route.startsWith('HEAD ')).sort())
    expect(described).toContain('POST /v1/estimates')
  })

  test('says of each operation what it is for, and gives each answer an example', () => {
    for (const { operationId, summary, description, tags, responses } of operations()) {
      expect([operationId, summary, description, tags?.[0]]).not.toContain(undefined)
      for (const [status, { content = {} }] of Object.entries(responses)) {
        // Answers without a body.
        if (status === '204' || status === '304') continue
        const [first, ...others] = Object.keys(content)
        // A batch is answered while it comes in, line by line.
        const good = operationId === 'takeInBatch' ? 'application/x-ndjson' : 'application/json'
        expect(first).toBe(status < '300' ? good : 'application/problem+json')
        expect(others.filter((type) => type !== 'text/csv' || status > '299')).toEqual([])
        expect(Object.values(content).every(({ examples = {} }) => Object.keys(examples).length > 0)).toBe(
          true,
        )
      }
    }
  })

  test('holds no schema that is not used and no name of a generator', () => {
    const text = JSON.stringify(document)
    const names = Object.keys(document.components.schemas)
    expect(names.filter((name) => !text.includes(`"#/components/schemas/${name}"`))).toEqual([])
    expect(names.filter((name) => name.endsWith('Input'))).toEqual([])
  })

  test.each([
    ['estimateHousehold', [200, 400, 401, 403, 404, 406, 413, 415, 422, 429, 500, 503]],
    ['listCategories', [200, 304, 400, 401, 403, 404, 406, 429, 500, 503]],
    ['readCategory', [200, 304, 400, 401, 403, 404, 406, 414, 429, 500, 503]],
    ['readReadiness', [200, 400, 401, 403, 406, 429, 500, 503]],
    ['issueApiKey', [201, 400, 401, 403, 406, 413, 415, 422, 429, 500, 503]],
  ])('%s declares every status that it answers', (operationId, statuses) => {
    const operation = operations().find((one) => one.operationId === operationId)
    expect(Object.keys(operation!.responses).map(Number)).toEqual(statuses)
  })
})

describe('the examples', () => {
  test.each(Object.entries(REQUEST_EXAMPLES['estimateHousehold']!))(
    '%s is estimated',
    async (_, { value }) => {
      await service.send
        .post('/v1/estimates')
        .send(value as object)
        .expect(200)
    },
  )

  test('the estimate is the answer to the smallest household', async () => {
    const { value } = REQUEST_EXAMPLES['estimateHousehold']!['smallest']!
    expect((await service.send.post('/v1/estimates').send(value as object)).body).toEqual(exampleEstimate)
  })

  test('the category and the list are what the catalogue answers', async () => {
    expect((await service.send.get('/v1/categories/television')).body).toEqual(exampleCategory)
    expect((await service.send.get('/v1/categories?search=old+tv')).body).toEqual(exampleCategoryList)
  })
})

describe('/docs', () => {
  test('is a page that loads nothing from another host and shows no foreign mark', async () => {
    const page = await service.send.get('/docs').expect(200)
    expect(page.headers['content-type']).toBe('text/html; charset=utf-8')
    expect(page.text).toContain('<title>Standby draw estimation</title>')
    expect(page.text).not.toMatch(/https?:\/\/|favicon/)
    const script = await service.send.get('/docs/static/swagger-initializer.js').expect(200)
    expect(script.text).toContain('{"layout":"BaseLayout","validatorUrl":null}')
    expect(script.text.match(/data:image[^']*/g)).toEqual(['data:image/svg+xml;base64,'])
    for (const [, source] of page.text.matchAll(/(?:src|href)="([^"]+)"/g))
      await service.send.get(source!).expect(200)
  })
})
