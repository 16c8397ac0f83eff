import { z } from 'zod'

type Examples = Readonly<Record<string, { readonly value: unknown }>>

/** A good answer of a route for its OpenAPI entry. */
export const jsonAnswer = (description: string, schema: z.ZodType, example: unknown, headers?: Headers) => ({
  description,
  ...(headers && { headers }),
  content: { 'application/json': { schema, examples: { example: { value: example } } satisfies Examples } },
})

type Headers = Readonly<Record<string, { readonly type: 'string' | 'integer'; readonly description: string }>>

/** What answers read from the catalogue say of themselves. */
export const CATALOGUE_HEADERS = {
  ETag: {
    type: 'string',
    description:
      'Tag of the catalogue revision that was read; send it as If-None-Match, or as If-Match to import or restore',
  },
  'Catalogue-Revision': { type: 'integer', description: 'The catalogue revision that was read' },
} as const satisfies Headers

/** What answers that are one category say of themselves. */
export const CATEGORY_HEADERS = {
  ...CATALOGUE_HEADERS,
  ETag: {
    type: 'string',
    description:
      "Tag of the category's state, which edits elsewhere leave as it is; send it as If-None-Match, or as If-Match to edit",
  },
} as const satisfies Headers

/** What answers read from tariffs and emission factors say of themselves. */
export const REFERENCE_HEADERS = {
  ETag: {
    type: 'string',
    description:
      'Tag of what was read; send it as If-None-Match, or that of a single one as If-Match to edit it',
  },
  'Reference-Revision': {
    type: 'integer',
    description: 'The revision of tariffs and emission factors that was read',
  },
} as const satisfies Headers

/** What answers say of themselves that depend on whose key was sent. */
export const OVERLAY_HEADER = {
  'Overlay-Revision': {
    type: 'integer',
    description: "The revision of your organisation's own figures that was read; 0 where there are none",
  },
} as const satisfies Headers

export const notModified = z
  .null()
  .describe('The answer that goes with the tag in If-None-Match is still current')
