import { Readable } from 'node:stream'
import { z } from 'zod'
import { intakeQuerySchema } from '../../../schemas/intake.ts'
import { knowsCategory } from '../../../useCases/knowsCategory.ts'
import { takeIn } from '../../../useCases/takeIn.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { allButTheBody, fitting, type RestApp, type SubmittedTypeProvider } from '../submitted.ts'
import { answerLines } from './answerLines.ts'
import { csvLines } from './csvLines.ts'
import { INTAKE_ANSWER } from './examples.ts'
import { ndjsonLines } from './ndjsonLines.ts'

const NDJSON = 'application/x-ndjson'
const CSV = 'text/csv'
const READS = [NDJSON, CSV]

/** In a scope of its own, where bodies are read as they arrive, however long they are. */
export function postIntakeBatch(app: RestApp, context: RestContext): void {
  void app.register(async (scope) => {
    scope.removeAllContentTypeParsers()
    scope.addContentTypeParser(READS, (_request, payload, done) => done(null, payload))
    scope.setValidatorCompiler(allButTheBody)
    addRoute(scope.withTypeProvider<SubmittedTypeProvider>(), context)
  })
}

function addRoute(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/intake-batches',
    // The body has no end that the service would set: one household at a time is in memory.
    bodyLimit: Number.MAX_SAFE_INTEGER,
    config: { scope: 'intake', reads: READS, produces: [NDJSON], arrivesSlowly: true },
    schema: {
      operationId: 'takeInBatch',
      tags: ['inventories'],
      summary: 'Estimate many households in one request, and keep them if wanted',
      description:
        'NDJSON (one household a line) or CSV (one a row, with a column for each category that holds how many there are) comes in ' +
        'as a stream, and NDJSON goes out as a stream: one line for each household in order, with its line number, an estimate or ' +
        'a problem; the last line counts them. A household with faults is answered with them and does not keep the others from ' +
        'being taken in. Read the answer while you send: what is not read slows the reading of what is sent. With store=true and ' +
        'batch=… each household is kept with its estimate before it is answered; after a broken connection send the same lines ' +
        'again, with after=… the last line that you have an answer to, and nothing is stored twice.',
      consumes: READS,
      querystring: intakeQuerySchema,
      body: z.string(),
      response: {
        200: INTAKE_ANSWER,
        ...problemAnswers(...NEEDS_KEY, ...NEEDS_BODY),
      },
    },
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const { store, batch, after, detail } = fitting(request.query)
      const body = (request.body as unknown as Readable).iterator({ destroyOnReturn: false })
      const isCsv = request.headers['content-type']?.toLowerCase().startsWith(CSV) ?? false
      const lines = isCsv
        ? csvLines(body, after, await knowsCategory(deps, senderOf(request)))
        : ndjsonLines(body, after)
      const answers = takeIn(deps, senderOf(request), lines, { batch: store ? (batch ?? null) : null })
      const text = answerLines(answers, { detail, after }, (error) =>
        request.log.error({ err: error }, 'a batch was broken off'),
      )
      // Only when the first line is there the status is said: a header with faults is still a problem answer.
      const first = await text.next()
      return reply
        .header('cache-control', 'no-store')
        .type(`${NDJSON}; charset=utf-8`)
        .send(Readable.from(startingWith(first, text), { objectMode: false, highWaterMark: BUFFER_BYTES }))
    },
  })
}

/** So much of the answer is held for a caller that reads late: bounded, and enough for one that reads only when all is sent. */
const BUFFER_BYTES = 8 * 1024 * 1024

async function* startingWith(first: IteratorResult<string, void>, rest: AsyncGenerator<string>) {
  if (first.done) return
  yield first.value
  yield* rest
}
