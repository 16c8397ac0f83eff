import type { FastifyReply, FastifyRequest } from 'fastify'
import { z } from 'zod'
import type { Category } from '../../../core/catalogue/category.ts'
import { formatCategoriesCsv } from '../../../schemas/categoryCsv.ts'
import type { ExportedCategories } from '../../../useCases/exportCatalogue.ts'
import { preferred } from '../accepts.ts'
import { catalogueTag, ownFigures, sendTagged } from '../conditional.ts'

/** The forms in which whole categories are answered; of equals the first. */
export const FORMS = ['application/json', 'text/csv'] as const

export const wantsCsv = (request: FastifyRequest) => preferred(request.headers.accept, FORMS) === 'text/csv'

/** Without an overlay revision it is the same for every caller. */
type CsvContent = Omit<ExportedCategories, 'overlayRevision'> & Partial<ExportedCategories>

/** Sends categories as one file that POST /v1/catalogue/imports reads back exactly. */
export function sendCsv(
  request: FastifyRequest,
  reply: FastifyReply,
  { categories, catalogueRevision, overlayRevision }: CsvContent,
): FastifyReply {
  reply.type('text/csv; charset=utf-8; header=present')
  reply.header('content-disposition', `attachment; filename="catalogue-r${catalogueRevision}.csv"`)
  const tag = catalogueTag(catalogueRevision, 'csv', ownFigures(request, overlayRevision ?? 0))
  const tagged = { tag, catalogueRevision, ...(overlayRevision !== undefined && { overlayRevision }) }
  return sendTagged(request, reply, tagged, formatCategoriesCsv(categories))
}

/** A JSON answer that is also to be had as CSV, for its OpenAPI entry. */
export const alsoAsCsv = <T extends { readonly content: object }>(json: T, example: readonly Category[]) => ({
  ...json,
  content: {
    ...json.content,
    'text/csv': {
      schema: z
        .string()
        .describe('One row for each category, mode and span of years; units in the header row'),
      examples: { example: { value: formatCategoriesCsv(example) } },
    },
  },
})
