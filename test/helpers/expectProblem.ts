import type { Response } from 'supertest'
import { expect } from 'vitest'
import type { ProblemCode } from '../../src/edges/errors.ts'
import { problemSchema } from '../../src/edges/rest/problem.ts'

/** Holds an answer against RFC 9457 and the conventions of the service, and gives its body. */
export function expectProblem(
  response: Response,
  status: number,
  code: ProblemCode,
): Record<string, unknown> {
  expect(response.status).toBe(status)
  expect(response.headers['content-type']).toBe('application/problem+json; charset=utf-8')
  expect(response.headers['cache-control']).toBe('no-store')
  expect(response.headers['x-content-type-options']).toBe('nosniff')
  const problem = problemSchema.parse(response.body)
  expect(problem).toMatchObject({ status, code, type: `/problems/${code}` })
  expect(problem.requestId).toBe(response.headers['x-request-id'])
  return problem
}

/** The faults of a problem answer as `pointer code`, or `query pointer code`, in the order of the pointers. */
export const faultsOf = (problem: Record<string, unknown>) =>
  (problem['errors'] as { in?: string; pointer: string; code: string }[])
    .map((fault) => [fault.in, fault.pointer, fault.code].filter(Boolean).join(' '))
    .sort()
