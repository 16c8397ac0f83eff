import { z } from 'zod'
import { categoryAnswerSchema, categoryQuerySchema } from '../../../schemas/category.ts'
import { exportCatalogue } from '../../../useCases/exportCatalogue.ts'
import { CATALOGUE_HEADERS, jsonAnswer, notModified } from '../answers.ts'
import { catalogueTag, sendTagged } from '../conditional.ts'
import { exampleCategory } from '../examples.ts'
import { problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { alsoAsCsv, FORMS, sendCsv, wantsCsv } from './forms.ts'

const exportSchema = z.array(categoryAnswerSchema).meta({ id: 'CatalogueExport' })

export function getExport(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/catalogue/export',
    config: { produces: FORMS },
    schema: {
      operationId: 'exportCatalogue',
      tags: ['catalogue'],
      summary: 'Get the whole shared catalogue at once, as JSON or CSV',
      description:
        'Every category, retired ones too, in the order of the codes, at the newest or at a named revision. Importing what ' +
        'this gives changes nothing; so no organisation has its own figures in it. Texts that a spreadsheet would run as formulas carry an apostrophe in the CSV, which ' +
        'an import takes away again.',
      querystring: categoryQuerySchema.pick({ catalogueRevision: true }),
      response: { 200: ANSWER, 304: notModified, ...problemAnswers('unknown-revision') },
    },
    handler: async (request, reply) => {
      const { catalogueRevision: asked } = fitting(request.query)
      const { categories, catalogueRevision } = await exportCatalogue(deps, asked)
      if (wantsCsv(request)) return sendCsv(request, reply, { categories, catalogueRevision })
      const tag = catalogueTag(catalogueRevision)
      return sendTagged(request, reply, { tag, catalogueRevision }, categories)
    },
  })
}

const ANSWER = alsoAsCsv(
  jsonAnswer('All categories', exportSchema, [exampleCategory], {
    ...CATALOGUE_HEADERS,
    'Content-Disposition': { type: 'string', description: 'A name for the CSV file' },
  }),
  [exampleCategory],
)
