import { type FastifyContextConfig, fastify } from 'fastify'
import request from 'supertest'
import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import { addDeprecation, type Deprecated } from '../../../src/edges/rest/deprecation.ts'
import { handleErrors } from '../../../src/edges/rest/handleErrors.ts'
import { describeApi } from '../../../src/edges/rest/openApi.ts'
import { problemAnswers } from '../../../src/edges/rest/problem.ts'
import { fitting, noQuery, submittedCompiler } from '../../../src/edges/rest/submitted.ts'

const SINCE = new Date('2026-03-01T00:00:00Z')
const SUNSET = new Date('2026-12-31T23:59:59Z')
const deprecated: Deprecated = { since: SINCE, sunset: SUNSET, link: '/docs' }

/** An app with one route, which has a next page, and which refuses a query. */
async function appWith(config: FastifyContextConfig) {
  const app = fastify()
  addDeprecation(app)
  handleErrors(app)
  app.setValidatorCompiler(submittedCompiler)
  app.setSerializerCompiler(() => JSON.stringify)
  await describeApi(app, '0.0.0-test')
  app.route({
    method: 'GET',
    url: '/v1/old',
    config,
    schema: {
      operationId: 'readOld',
      summary: 'A route for the test',
      querystring: noQuery,
      response: { 200: { content: { 'application/json': { schema: z.object({}) } } }, ...problemAnswers() },
    },
    handler: async ({ query }, reply) => {
      fitting(query as Parameters<typeof fitting>[0])
      return reply.header('link', '</v1/old?cursor=2>; rel="next"').send({})
    },
  })
  await app.ready()
  return app
}

describe('a deprecated route', () => {
  test('says since when, and until when, each in the form of its own standard', async () => {
    const app = await appWith({ deprecated })
    const { headers } = await request(app.server).get('/v1/old').expect(200)
    expect(headers['deprecation']).toBe('@1772323200')
    expect(headers['sunset']).toBe('Thu, 31 Dec 2026 23:59:59 GMT')
    await app.close()
  })

  test('links to what to read, beside the links that the answer has anyway', async () => {
    const app = await appWith({ deprecated })
    const { headers } = await request(app.server).get('/v1/old')
    expect(headers['link']).toBe(
      '</v1/old?cursor=2>; rel="next", </docs>; rel="deprecation"; type="text/html", </docs>; rel="sunset"; type="text/html"',
    )
    await app.close()
  })

  test('says so on its refusals, too', async () => {
    const app = await appWith({ deprecated })
    const { headers, body } = await request(app.server).get('/v1/old?unknown=1').expect(400)
    expect(body.code).toBe('faulty-query')
    expect(headers['deprecation']).toBe('@1772323200')
    expect(headers['link']).toBe(
      '</docs>; rel="deprecation"; type="text/html", </docs>; rel="sunset"; type="text/html"',
    )
    await app.close()
  })

  test('names no end that is not decided', async () => {
    const app = await appWith({ deprecated: { ...deprecated, sunset: null } })
    const { headers } = await request(app.server).get('/v1/old')
    expect(headers['deprecation']).toBe('@1772323200')
    expect(headers).not.toHaveProperty('sunset')
    expect(headers['link']).not.toContain('sunset')
    await app.close()
  })

  test('is deprecated in the document', async () => {
    const app = await appWith({ deprecated })
    expect(app.swagger().paths?.['/v1/old']?.get).toMatchObject({ deprecated: true, operationId: 'readOld' })
    await app.close()
  })

  test.each([
    ['ends before it is deprecated', { ...deprecated, sunset: new Date('2026-02-28T00:00:00Z') }],
    ['is deprecated at no time', { ...deprecated, since: new Date('soon') }],
    ['ends at no time', { ...deprecated, sunset: new Date('soon') }],
    ['has a link that would end the field', { ...deprecated, link: '/docs>; rel="next"' }],
    ['has a link without an address', { ...deprecated, link: 'docs' }],
  ])('that %s is refused while the routes are added', async (_, unfit) => {
    await expect(appWith({ deprecated: unfit })).rejects.toThrow('/v1/old')
  })
})

test('a route that is not deprecated says nothing of it', async () => {
  const app = await appWith({})
  const { headers } = await request(app.server).get('/v1/old').expect(200)
  expect(headers).not.toHaveProperty('deprecation')
  expect(headers['link']).toBe('</v1/old?cursor=2>; rel="next"')
  expect(app.swagger().paths?.['/v1/old']?.get).not.toHaveProperty('deprecated')
  await app.close()
})
