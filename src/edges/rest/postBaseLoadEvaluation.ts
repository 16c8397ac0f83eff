import type { Readable } from 'node:stream'
import type { Submitted } from '../../core/fault.ts'
import {
  type BaseLoadQuery,
  type BaseLoadRequest,
  baseLoadQuerySchema,
  baseLoadRequestSchema,
} from '../../schemas/baseLoad.ts'
import { readBlocks } from '../../schemas/baseLoadBlocks.ts'
import { readBaseLoadCsv } from '../../schemas/baseLoadCsv.ts'
import { baseLoadEvaluationSchema } from '../../schemas/baseLoadEvaluation.ts'
import { readEspi } from '../../schemas/espiReader.ts'
import { readShape } from '../../schemas/readShape.ts'
import type { Sender } from '../../useCases/authorize.ts'
import type { Deps } from '../../useCases/deps.ts'
import { evaluateBaseLoad } from '../../useCases/evaluateBaseLoad.ts'
import { jsonAnswer } from './answers.ts'
import { mayEstimate } from './authorize.ts'
import { exampleBaseLoadEvaluation } from './baseLoadExamples.ts'
import { inQuery, optionsOfQuery } from './baseLoadQuery.ts'
import { bodyRequired } from './bodyRequired.ts'
import { bytesUpTo } from './bytesUpTo.ts'
import { NEEDS_BODY, problemAnswers } from './problem.ts'
import type { RestContext } from './restContext.ts'
import { senderOf } from './senderOf.ts'
import { allButTheBody, queryFaults, type RestApp, type SubmittedTypeProvider } from './submitted.ts'

const XML = ['application/xml', 'application/atom+xml']
const CSV = 'text/csv'
const READS = ['application/json', ...XML, CSV]
const DEFAULT_LIMIT_BYTES = 32 * 1024 * 1024

/** In a scope of its own, since this route takes files, and reads them as they arrive. */
export function postBaseLoadEvaluation(app: RestApp, context: RestContext): void {
  void app.register(async (scope) => {
    scope.addContentTypeParser([...XML, CSV], (_request, payload, done) => done(null, payload))
    scope.setValidatorCompiler(allButTheBody)
    addRoute(scope.withTypeProvider<SubmittedTypeProvider>(), context)
  })
}

function addRoute(app: RestApp, { deps, anonymousEstimates, baseLoadLimitBytes }: RestContext): void {
  const limitBytes = baseLoadLimitBytes ?? DEFAULT_LIMIT_BYTES
  app.route({
    method: 'POST',
    url: '/v1/base-load/evaluate',
    bodyLimit: limitBytes,
    config: { reads: READS },
    schema: {
      operationId: 'evaluateBaseLoad',
      tags: ['estimates'],
      summary: 'Read off a meter’s intervals what a home draws when nobody uses anything',
      description:
        'Several estimators side by side, one of them chosen and explained with its interval and the days that it rests on; ' +
        'gaps, duplicates, changes of the clock, outages, days away and generation behind the meter are handled or named. ' +
        'Where an inventory or its power is given, how much of the base load it explains, and what the rest could be. ' +
        'ESPI (an Atom feed with LocalTimeParameters, ReadingType and IntervalBlocks) and CSV (a header row with start or ' +
        'end, and wattHours, kilowattHours, watts or kilowatts, or any name with its unit in brackets) are read as they ' +
        'arrive and have their options in the query; JSON has them in the body. Nothing is stored.',
      consumes: READS,
      querystring: baseLoadQuerySchema,
      body: baseLoadRequestSchema,
      response: {
        200: jsonAnswer('The evaluation', baseLoadEvaluationSchema, exampleBaseLoadEvaluation),
        ...problemAnswers(
          ...NEEDS_BODY,
          'key-required',
          'unknown-revision',
          'unknown-reference-revision',
          'unknown-overlay-revision',
        ),
      },
    },
    onRequest: mayEstimate(anonymousEstimates),
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      reply.header('cache-control', 'no-store')
      const { query } = request
      const body: unknown = request.body
      const form = formOf(request.headers['content-type'])
      const sender = senderOf(request)
      if (form === 'json') return answerJson(deps, sender, readShape(baseLoadRequestSchema, body), query)
      const bytes = bytesUpTo(body as Readable, limitBytes)
      const read = form === 'espi' ? readEspi : readBaseLoadCsv
      try {
        return await evaluateBaseLoad(deps, sender, optionsOfQuery(query), () =>
          read(bytes, query.value?.timeZone),
        )
      } catch (error) {
        throw inQuery(error)
      }
    },
  })
}

async function answerJson(
  deps: Deps,
  sender: Sender,
  body: Submitted<BaseLoadRequest>,
  query: Submitted<BaseLoadQuery>,
) {
  const faults = [...queryFaults(query), ...inBodyInstead(query), ...body.faults]
  return evaluateBaseLoad(deps, sender, { ...body, faults }, async () =>
    readBlocks(body.value?.blocks ?? [], body.value?.timeZone),
  )
}

function formOf(contentType = ''): 'json' | 'espi' | 'csv' {
  const [type = ''] = contentType.toLowerCase().split(';')
  if (type.trim() === CSV) return 'csv'
  return XML.includes(type.trim()) ? 'espi' : 'json'
}

/** In JSON there is one place for each option. */
const inBodyInstead = ({ value }: Submitted<BaseLoadQuery>) =>
  Object.keys(value ?? {}).map((name) => ({
    in: 'query' as const,
    pointer: `/${name}`,
    code: 'belongs-in-body',
    message: `With JSON, ${name} goes into the body.`,
  }))
