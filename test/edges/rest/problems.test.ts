import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { DomainError, FaultyInput } from '../../../src/core/fault.ts'
import { isProblemCode, PROBLEMS, translate } from '../../../src/edges/errors.ts'
import { memoryCatalogueStore } from '../../stores/memoryCatalogueStore.ts'
import { expectProblem } from '../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

let service: TestApp
beforeAll(async () => (service = await testApp()))
afterAll(() => service.close())

describe('GET /problems/{code}', () => {
  test.each(Object.entries(PROBLEMS))('explains %s at the address that its type names', async (code, row) => {
    const { status, title, explanation } = row
    const { body } = await service.send.get(translate(new DomainError(code, 'anything')).type).expect(200)
    expect(body).toEqual({ type: `/problems/${code}`, code, status, title, explanation })
  })

  test.each(['nothing', '__proto__', 'constructor', 'toString'])('does not know %s', async (code) => {
    expectProblem(await service.send.get(`/problems/${code}`), 404, 'unknown-problem')
  })
})

describe('translate', () => {
  test('every code that the core, the use cases and the edges throw is in the table', () => {
    const source = fileURLToPath(new URL('../../../src/', import.meta.url))
    const files = readdirSync(source, { recursive: true, encoding: 'utf8' }).filter((file) =>
      /^(core|useCases|edges)\/.*\.ts$/.test(file),
    )
    const thrown = files.flatMap((file) =>
      [...readFileSync(source + file, 'utf8').matchAll(/new DomainError\(\s*'([^']+)'/g)].map(
        ([, code]) => code!,
      ),
    )
    expect(thrown).toContain('unknown-category')
    // A mistake of our own, never a caller's: it is meant to be 500.
    const ours = ['household-not-checked', 'stock-not-checked', 'answers-not-checked']
    expect(thrown.filter((code) => !isProblemCode(code) && !ours.includes(code))).toEqual([])
    expect(ours.map((code) => translate(new DomainError(code, 'anything')).status)).toEqual(
      ours.map(() => 500),
    )
  })

  test('details of an error go beside the members of RFC 9457 and never in their place', async () => {
    const store = memoryCatalogueStore()
    const { send, close } = await testApp({
      catalogueStore: {
        ...store,
        catalogueAt: (revision) =>
          revision === 1
            ? store.catalogueAt(1)
            : Promise.reject(
                new DomainError('unknown-revision', 'No.', { status: 200, type: 'x', newest: 1 }),
              ),
      },
    })
    const problem = expectProblem(
      await send.get('/v1/categories?catalogueRevision=2'),
      404,
      'unknown-revision',
    )
    expect(problem['newest']).toBe(1)
    await close()
  })

  test('faults of the query alone are 400, any fault of the body makes it 422', () => {
    const [inQuery, inBody] = [
      { in: 'query', pointer: '/limit', code: 'too-big', message: 'must be smaller.' },
      { pointer: '/devices', code: 'required', message: 'is required.' },
    ]
    expect(translate(new FaultyInput([inQuery])).status).toBe(400)
    expect(translate(new FaultyInput([inQuery, inBody])).status).toBe(422)
  })
})

describe('an unexpected error', () => {
  test('is 500 and tells nothing of the inside; the log has it under the request id', async () => {
    const store = memoryCatalogueStore()
    const { send, close, log } = await testApp({
      catalogueStore: {
        ...store,
        catalogueAt: (revision) =>
          revision === 1
            ? store.catalogueAt(1)
            : Promise.reject(new Error('SELECT secret-marker FROM /srv/x')),
      },
    })
    const answer = await send.get('/v1/categories?catalogueRevision=2')
    const { requestId } = expectProblem(answer, 500, 'internal')
    expect(answer.text).not.toMatch(/secret-marker|SELECT|\/srv|at .*\.ts/)
    const line = log()
      .split('\n')
      .find((entry) => entry.includes('secret-marker'))
    expect(JSON.parse(line!)).toMatchObject({ level: 'error', requestId })
    await close()
  })
})
