import { describe, expect, test } from 'vitest'
import { expectProblem, faultsOf } from '../../helpers/expectProblem.ts'
import { testApp } from '../../helpers/testApp.ts'

const failing = () => Promise.reject(new Error('the socket to db.internal is gone'))

describe('health', () => {
  test('live and ready where all is well, kept by nobody', async () => {
    const { send, close } = await testApp()
    const [live, ready] = [await send.get('/health/live'), await send.get('/health/ready')]
    expect([live.status, live.body]).toEqual([200, { status: 'live' }])
    expect([ready.status, ready.body]).toEqual([
      200,
      { status: 'ready', checks: { database: 'answers', catalogue: 'loaded' }, catalogueRevision: 1 },
    ])
    expect([live, ready].map(({ headers }) => headers['cache-control'])).toEqual(['no-store', 'no-store'])
    await close()
  })

  test('not ready, but live, while the database fails; why is in the log and not in the answer', async () => {
    const { send, close, log } = await testApp({ checkStore: failing })
    const answer = await send.get('/health/ready')
    const problem = expectProblem(answer, 503, 'not-ready')
    expect(problem['checks']).toEqual({ database: 'does not answer', catalogue: 'loaded' })
    expect(answer.headers['retry-after']).toBe('5')
    expect(answer.text).not.toContain('db.internal')
    expect(log()).toContain('db.internal')
    await send.get('/health/live').expect(200)
    await close()
  })

  test('not ready while the catalogue is empty', async () => {
    const { send, close } = await testApp({ categories: [] })
    const problem = expectProblem(await send.get('/health/ready'), 503, 'not-ready')
    expect(problem['checks']).toEqual({ database: 'answers', catalogue: 'empty' })
    await close()
  })

  test('an unknown parameter is refused', async () => {
    const { send, close } = await testApp()
    const problem = expectProblem(await send.get('/health/live?verbose=1'), 400, 'faulty-query')
    expect(faultsOf(problem)).toEqual(['query /verbose unknown-field'])
    await close()
  })
})
