import type { IncomingMessage, ServerResponse } from 'node:http'
import type {
  FastifyBaseLogger,
  FastifyInstance,
  FastifySchemaCompiler,
  FastifyTypeProvider,
  RawServerDefault,
} from 'fastify'
import { z } from 'zod'
import { FaultyInput, type Submitted } from '../../core/fault.ts'
import { readShape } from '../../schemas/readShape.ts'
import type { ShownFault } from '../errors.ts'

/**
 * What a route's schemas make of a request: each part comes as what was submitted and its faults, and nothing is
 * refused yet. The framework itself stops at the first part that fails, and could not add the faults that only
 * the trade's rules find; so each handler refuses with all of them at once.
 */
export interface SubmittedTypeProvider extends FastifyTypeProvider {
  validator: this['schema'] extends z.ZodType ? Submitted<z.output<this['schema']>> : unknown
  serializer: this['schema'] extends z.ZodType ? z.output<this['schema']> : unknown
}

export const submittedCompiler: FastifySchemaCompiler<z.ZodType> =
  ({ schema }) =>
  (data: unknown) => ({ value: readShape(schema, data) })

/** The same for routes whose handler reads the body itself: as a stream, in several forms, or with bounds on what is listed of its faults. */
export const allButTheBody: typeof submittedCompiler = (route) =>
  route.httpPart === 'body' ? (data: unknown) => ({ value: data }) : submittedCompiler(route)

/** The query of a route that has none: any parameter is a fault. */
export const noQuery = z.strictObject({})

/** The faults of a query, told apart from those of the body. */
export const queryFaults = (query: Submitted<unknown>): readonly ShownFault[] =>
  query.faults.map((fault) => ({ in: 'query' as const, ...fault }))

/**
 * A query whose every parameter fits.
 * @throws FaultyInput naming every fault
 */
export function fitting<T>(query: Submitted<T>): T {
  if (query.value === null) throw new FaultyInput(queryFaults(query))
  return query.value
}

/** The app as routes see it. */
export type RestApp = FastifyInstance<
  RawServerDefault,
  IncomingMessage,
  ServerResponse,
  FastifyBaseLogger,
  SubmittedTypeProvider
>
