import swagger from '@fastify/swagger'
import swaggerUi from '@fastify/swagger-ui'
import type { FastifyInstance } from 'fastify'
import { jsonSchemaTransform, jsonSchemaTransformObject } from 'fastify-type-provider-zod'
import { REQUEST_EXAMPLES } from './examples.ts'
import { addLimitHeaders, LIMIT_HEADERS } from './limitHeaders.ts'
import { requestParts } from './requestParts.ts'
import { tidyDocument } from './tidyDocument.ts'

const DESCRIPTION = `
Estimates what the devices of a household draw while nobody uses them: watts, kWh, money and emissions a year, each with an interval and a flag that tells measured from assumed.

Every answer carries X-Request-Id; a caller's own is kept where it is 1 to 64 letters, digits or any of . _ -. A traceparent (W3C Trace Context) is kept in the log of the service. Bodies are read up to 1 MiB, unless the operator sets another limit. Unknown fields and parameters are refused, not dropped. Errors are problem details (RFC 9457) that name every fault at once; /problems/{code} explains each code. Besides what each operation lists, HTTP itself may be refused with 405, 408, 417 and 431. The same figures come from GraphQL at /graphql.

How often one caller may ask is limited, GraphQL included, where the operator does not set it otherwise: RateLimit and RateLimit-Policy (draft-ietf-httpapi-ratelimit-headers-11) say on every answer how many requests are left, and 429 with Retry-After when to come back. Callers with a secret key are counted by it, others by their network; /health is not counted.

New fields may be added to answers at any time; that does not make a new version.`.trim()

const LICENSE = { name: 'All rights reserved', identifier: 'LicenseRef-All-Rights-Reserved' }

/** The page loads its own files and nothing else; styles that scripts set on elements are not bound by style-src. */
const PAGE_POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; " +
  "base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

type Transform = typeof jsonSchemaTransform
type TransformObject = typeof jsonSchemaTransformObject
interface Operation {
  readonly operationId?: string
  readonly requestBody?: { readonly content: Readonly<Record<string, object>> }
}
interface Answer {
  readonly headers?: object
  readonly content?: Readonly<Record<string, { readonly examples?: object }>>
}

/** The zod transform keeps of an answer only its schema; its headers and examples are put back. Other routes are hidden. */
const transform: Transform = (document) => {
  const { schema: written, url, route } = document
  if (!written.operationId) return { schema: { hide: true }, url }
  const { schema } = jsonSchemaTransform(document)
  const answers = (written.response ?? {}) as Record<string, Answer>
  for (const [status, shown] of Object.entries((schema.response ?? {}) as Record<string, Answer>)) {
    const { headers, content = {} } = answers[status] ?? {}
    Object.assign(shown, headers && { headers })
    for (const [type, { examples }] of Object.entries(content))
      Object.assign(shown.content?.[type] ?? {}, { examples })
  }
  const config = route.config ?? {}
  const security = config.scope !== undefined && { security: [{ key: [config.scope] }] }
  const deprecated = config.deprecated !== undefined && { deprecated: true }
  return { schema: { ...schema, ...requestParts(schema, config), ...security, ...deprecated }, url }
}

/** Adds the named components, and to each operation the examples of its request body. */
const transformObject: TransformObject = (document) => {
  const whole = addLimitHeaders(jsonSchemaTransformObject(document))
  const paths = (whole.paths ?? {}) as Record<string, Record<string, Operation>>
  for (const { operationId = '', requestBody } of Object.values(paths).flatMap(Object.values<Operation>)) {
    const examples = REQUEST_EXAMPLES[operationId]
    for (const [type, shown] of Object.entries(requestBody?.content ?? {}))
      if (examples && type.endsWith('json')) Object.assign(shown, { examples })
  }
  return tidyDocument(whole)
}

/**
 * Registers the document before the routes that go into it, and the page that shows it, where the operator wants one; that
 * one, /docs, loads nothing from elsewhere.
 */
export async function describeApi(app: FastifyInstance, version: string, page = true): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: { title: 'Standby draw estimation', version, description: DESCRIPTION, license: LICENSE },
      security: [],
      components: {
        headers: LIMIT_HEADERS,
        securitySchemes: {
          key: {
            type: 'http',
            scheme: 'bearer',
            description:
              'An API key. The roles that an operation lists are scopes; admin holds all others. Estimates need a key only ' +
              'where the operator gives none to callers without one.',
          },
        },
      },
      servers: [{ url: '/', description: 'This service' }],
      tags: [
        { name: 'estimates', description: 'What a household draws while nobody uses anything' },
        { name: 'quiz', description: 'A self-check for websites' },
        { name: 'catalogue', description: 'Kinds of devices and their typical draws' },
        {
          name: 'inventories',
          description: "Your organisation's households, and the estimates kept of them",
        },
        {
          name: 'own figures',
          description: 'What an organisation lays over the shared catalogue for its own callers',
        },
        { name: 'money and grid', description: 'Tariffs and emission factors' },
        {
          name: 'limits and cautions',
          description: 'Published limits on standby power, and safety statements',
        },
        { name: 'savings', description: 'What a household can do about standby, and what is worth doing' },
        { name: 'populations', description: 'Streets, cities and countries' },
        { name: 'verification', description: 'What was saved between two visits' },
        { name: 'access', description: 'Organisations, their API keys, and the audit trail' },
        { name: 'service', description: 'The service itself' },
      ],
    },
    transform,
    transformObject,
  })
  if (!page) return
  await app.register(swaggerUi, {
    routePrefix: '/docs',
    staticCSP: PAGE_POLICY,
    logo: { type: 'image/svg+xml', content: '' },
    theme: { title: 'Standby draw estimation', favicon: [] },
    uiConfig: { layout: 'BaseLayout', validatorUrl: null },
  })
}
