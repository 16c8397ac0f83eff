import type { FastifyRequest } from 'fastify'
import type { Sender } from '../../useCases/authorize.ts'

/** A request as use cases know it. */
export const senderOf = ({ caller, id }: FastifyRequest): Sender => ({ caller, requestId: id })
