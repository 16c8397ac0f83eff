/** What answers of limited routes say of the limit, as components of the OpenAPI document. */
export const LIMIT_HEADERS = {
  'RateLimit-Policy': {
    description: 'The limit: q requests in w seconds. Missing where the operator limits nothing',
    schema: { type: 'string' },
    example: '"network";q=600;w=60',
  },
  RateLimit: {
    description: 'What is left: r requests, until it is all of them again in t seconds',
    schema: { type: 'string' },
    example: '"network";r=597;t=42',
  },
  'Retry-After': {
    description: 'Seconds to wait before the next request',
    schema: { type: 'string' },
    example: '42',
  },
} as const

interface Answer {
  readonly content?: Readonly<Record<string, { readonly examples?: object }>>
  headers?: object
}
type Answers = Readonly<Record<string, Answer>>

/** Names the headers on every answer of the operations that may answer `quota-exceeded`: those are the limited ones. */
export function addLimitHeaders<T extends { readonly paths?: object }>(document: T): T {
  const operations = Object.values(document.paths ?? {}).flatMap((path) =>
    Object.values<{ readonly responses?: Answers }>(path as object & Record<string, object>),
  )
  for (const { responses = {} } of operations) {
    const tooMany = responses['429']
    if (tooMany) tooMany.headers = { ...tooMany.headers, ...referTo('Retry-After') }
    const examples = Object.values(tooMany?.content ?? {}).map((shown) => shown.examples ?? {})
    if (!examples.some((named) => 'quota-exceeded' in named)) continue
    for (const answer of Object.values(responses))
      answer.headers = { ...answer.headers, ...referTo('RateLimit-Policy', 'RateLimit') }
  }
  return document
}

const referTo = (...names: readonly (keyof typeof LIMIT_HEADERS)[]) =>
  Object.fromEntries(names.map((name) => [name, { $ref: `#/components/headers/${name}` }]))
