import { z } from 'zod'
import { DomainError } from '../../../core/fault.ts'
import type { ImportFile } from '../../../core/catalogue/importFile.ts'
import { importedCategorySchema, importQuerySchema } from '../../../schemas/catalogueEdit.ts'
import { importReportSchema } from '../../../schemas/catalogueEditReport.ts'
import { showChange, showRevision } from '../../../schemas/catalogueRevision.ts'
import { readCsvImport } from '../../../schemas/categoryImportCsv.ts'
import { readJsonImport } from '../../../schemas/categoryImportJson.ts'
import { type ImportReport, importCatalogue } from '../../../useCases/importCatalogue.ts'
import { CATALOGUE_HEADERS, jsonAnswer } from '../answers.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { catalogueTag, tagHeaders } from '../conditional.ts'
import { basisOfCatalogue } from '../ifMatch.ts'
import { NEEDS_BODY, NEEDS_OPERATOR_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { allButTheBody, fitting, type RestApp, type SubmittedTypeProvider } from '../submitted.ts'
import { exampleImportReport } from './examples.ts'

const CSV = 'text/csv'
const READS = [CSV, 'application/json']
const DEFAULT_LIMIT_BYTES = 16 * 1024 * 1024
const MARKS = { comma: ',', semicolon: ';', point: '.' } as const

/** In a scope of its own, where a body may be CSV, and large. */
export function postImport(app: RestApp, context: RestContext): void {
  void app.register(async (scope) => {
    scope.addContentTypeParser(CSV, { parseAs: 'buffer' }, (_request, body, done) => done(null, body))
    scope.setValidatorCompiler(allButTheBody)
    addRoute(scope.withTypeProvider<SubmittedTypeProvider>(), context)
  })
}

function addRoute(app: RestApp, { deps, importLimitBytes = DEFAULT_LIMIT_BYTES }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/catalogue/imports',
    bodyLimit: importLimitBytes,
    config: { scope: 'catalogue:edit', conditions: ['If-Match'], reads: READS },
    schema: {
      operationId: 'importCatalogue',
      tags: ['catalogue'],
      summary: 'Take over a file of categories, or learn what that would do',
      description:
        'CSV as GET /v1/catalogue/export gives it, or a list of categories in JSON. All of it is stored as one new revision, ' +
        'or nothing. With dryRun=true nothing is stored, and the answer lists each addition, change and retirement, and ' +
        'every bad row. CSV is UTF-8, with or without byte order mark; semicolons and decimal commas are recognised, and ' +
        'recognised says so; a file that could be read in two ways is refused. Categories that the file does not speak of ' +
        'stay as they are, unless retireMissing=true. Needs If-Match with the ETag of the newest revision, but for a dry run.',
      consumes: READS,
      querystring: importQuerySchema,
      body: z.array(importedCategorySchema),
      response: {
        200: jsonAnswer('What a dry run found, or nothing had to change', importReportSchema, {
          ...exampleImportReport,
          dryRun: true,
          revision: null,
        }),
        201: jsonAnswer('What was stored', importReportSchema, exampleImportReport, {
          ...CATALOGUE_HEADERS,
          Location: { type: 'string', description: 'Address of the revision that was made' },
        }),
        ...problemAnswers(
          ...NEEDS_OPERATOR_KEY,
          ...NEEDS_BODY,
          'malformed-condition',
          'precondition-required',
          'stale-revision',
          'large-change',
          'faulty-import',
        ),
      },
    },
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const { delimiter, decimal, reason = '', ...options } = fitting(request.query)
      const basedOn = basisOfCatalogue(request)
      const file = readFile(request.body, request.headers['content-type'] ?? '', {
        ...(delimiter && { delimiter: MARKS[delimiter] }),
        ...(decimal && { decimal: MARKS[decimal] }),
      })
      const { rows, badRowCount, categories } = file
      request.log.info({ rows, badRowCount, categories: categories.length }, 'import: file read')
      const report = await importCatalogue(deps, senderOf(request), file, {
        ...options,
        reason,
        basedOn,
        onProgress: (done, total) => request.log.info({ done, total }, 'import: categories stored'),
      })
      const { catalogueRevision, revision } = report
      reply.headers({
        ...tagHeaders({ tag: catalogueTag(catalogueRevision), catalogueRevision }),
        'cache-control': 'no-store',
      })
      if (revision) reply.code(201).header('location', `/v1/catalogue/revisions/${revision.number}`)
      return reply.send(showReport(report))
    },
  })
}

function readFile(
  body: unknown,
  contentType: string,
  dialect: Parameters<typeof readCsvImport>[1],
): ImportFile {
  if (!Buffer.isBuffer(body)) return readJsonImport(body)
  const [, charset = 'utf-8'] = /;\s*charset="?([^";\s]+)/i.exec(contentType) ?? []
  if (!/^(utf-?8|us-ascii)$/i.test(charset))
    throw new DomainError('unsupported-media-type', `CSV is read in UTF-8 only, not in ${charset}.`)
  return readCsvImport(body, dialect)
}

const showReport = (report: ImportReport) => ({
  ...report,
  changes: report.changes.map(showChange),
  revision: report.revision && showRevision(report.revision),
})
