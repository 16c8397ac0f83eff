import { z } from 'zod'
import { DomainError } from '../../core/fault.ts'
import { isProblemCode, PROBLEMS, type ProblemCode, typeOf } from '../errors.ts'
import { jsonAnswer } from './answers.ts'
import { problemAnswers, unknownPath } from './problem.ts'
import { fitting, noQuery, type RestApp } from './submitted.ts'

const explanationSchema = z
  .strictObject({
    type: z.string(),
    code: z.string(),
    title: z.string(),
    status: z.int(),
    explanation: z.string(),
  })
  .meta({ id: 'ProblemExplanation' })

const explain = (code: ProblemCode) => {
  const { title, status, explanation } = PROBLEMS[code]
  return { type: typeOf(code), code, title, status, explanation }
}

/** What the `type` of every problem answer leads to. */
export function getProblem(app: RestApp): void {
  app.route({
    method: 'GET',
    url: '/problems/:code',
    schema: {
      operationId: 'explainProblem',
      tags: ['service'],
      summary: 'Explain the code of an error answer',
      description: 'The type of a problem answer (RFC 9457) is an address here.',
      params: z.strictObject({ code: z.string().describe('Code of an error answer, such as faulty-input') }),
      querystring: noQuery,
      response: {
        200: jsonAnswer('What the code means and what to do', explanationSchema, explain('faulty-input')),
        ...problemAnswers('unknown-problem', 'address-too-long'),
      },
    },
    handler: async (request) => {
      fitting(request.query)
      const { code } = fitting(request.params)
      if (code === '') throw unknownPath()
      if (isProblemCode(code)) return explain(code)
      throw new DomainError('unknown-problem', `There is no problem with the code ${JSON.stringify(code)}.`)
    },
  })
}
