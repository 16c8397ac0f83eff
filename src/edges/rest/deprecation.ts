import type { FastifyInstance } from 'fastify'

/** That callers should leave a route, since when, until when it answers, and what to read about it. */
export interface Deprecated {
  readonly since: Date
  /** When the route is going to end; null while that is not decided. Never before `since`. */
  readonly sunset: Date | null
  /** A page that says what to use in its place; an absolute address or a path. */
  readonly link: string
}

declare module 'fastify' {
  interface FastifyContextConfig {
    readonly deprecated?: Deprecated
  }
}

/**
 * Says on every answer of a deprecated route that it is one, refusals among them. The two fields write a date each in its
 * own way: Deprecation as a structured date (RFC 9745, 2.1; RFC 9651, 3.3.7), Sunset as an HTTP date (RFC 8594, 3).
 * @throws Error while the routes are added, where a date or the link can't be
 */
export function addDeprecation(app: FastifyInstance): void {
  app.addHook('onRoute', ({ url, config }) => {
    if (config?.deprecated) refuseUnfit(url, config.deprecated)
  })
  app.addHook('onSend', async ({ routeOptions }, reply) => {
    const { deprecated } = routeOptions.config
    if (deprecated === undefined) return
    const others = [reply.getHeader('link') ?? []].flat()
    reply.headers({ ...deprecationHeaders(deprecated), link: [...others, ...links(deprecated)].join(', ') })
  })
}

const deprecationHeaders = ({ since, sunset }: Deprecated) => ({
  deprecation: `@${Math.floor(since.getTime() / 1000)}`,
  ...(sunset && { sunset: sunset.toUTCString() }),
})

const links = ({ link, sunset }: Deprecated) => [
  `<${link}>; rel="deprecation"; type="text/html"`,
  ...(sunset ? [`<${link}>; rel="sunset"; type="text/html"`] : []),
]

/** RFC 9745, 4: the end must not lie before the beginning. */
function refuseUnfit(url: string, { since, sunset, link }: Deprecated): void {
  const dates = sunset ? [since, sunset] : [since]
  if (dates.some((date) => Number.isNaN(date.getTime())))
    throw new Error(`${url} is deprecated at a time that is none.`)
  if (sunset && sunset < since) throw new Error(`${url} ends before it is deprecated.`)
  if (!/^(https:\/\/|\/)[^\s<>"]*$/.test(link))
    throw new Error(`${url} is deprecated with a link that is none.`)
}
