import autocannon from 'autocannon'

const CONNECTIONS = 10

/**
 * POSTs the bodies for some seconds over ten connections, each with bodies of its own, and tells the requests answered a
 * second. Refuses to count failures.
 */
export async function measureRate(url: string, bodies: readonly string[], seconds: number): Promise<number> {
  const { origin, pathname: path } = new URL(url)
  const headers = { 'content-type': 'application/json' }
  const requests = bodies.map((body) => ({ method: 'POST' as const, path, headers, body }))
  let connection = 0
  const result = await autocannon({
    url: origin,
    connections: CONNECTIONS,
    duration: seconds,
    requests: requests.slice(0, 1),
    setupClient: (client) => {
      const own = connection++
      client.setRequests(requests.filter((_, index) => index % CONNECTIONS === own))
    },
  })
  const failed = result.non2xx + result.errors + result.timeouts
  if (failed > 0)
    throw new Error(`${failed} of the requests to ${url} failed; the bench counts good answers only.`)
  return result.requests.total / result.duration
}
