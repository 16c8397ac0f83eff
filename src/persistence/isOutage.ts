import { errorCode } from './errorCode.ts'

/** What the adapter calls failures of the connection. */
const KINDS = new Set(['DatabaseNotReachable', 'ConnectionClosed', 'SocketTimeout', 'TooManyConnections'])
/**
 * What PostgreSQL answers where it takes no more sessions or ends them: class 08 (connection), 53300 (too many), 57P01 to
 * 57P03 (shutting down, crashed, starting). Source: PostgreSQL documentation, Appendix A.
 */
const STATES = /^(08...|53300|57P0[123])$/
const SYSTEM = new Set(['ECONNREFUSED', 'ECONNRESET', 'ETIMEDOUT', 'ENOTFOUND', 'EPIPE'])
/** What node-postgres says without a code. */
const SENTENCES =
  /^(Connection terminated|timeout exceeded when trying to connect|Client has encountered a connection error)/

interface Reported {
  readonly driverAdapterError?: {
    readonly cause?: { readonly kind?: string; readonly originalCode?: string }
  }
}

/** Whether an error says that the database cannot be had now, and not that something is wrong with what it was asked. */
export function isOutage(error: unknown): boolean {
  if (!(error instanceof Error)) return false
  const { kind = '', originalCode = errorCode(error) } =
    (error as Error & { readonly meta?: Reported }).meta?.driverAdapterError?.cause ?? {}
  return (
    KINDS.has(kind) || STATES.test(originalCode) || SYSTEM.has(originalCode) || SENTENCES.test(error.message)
  )
}
