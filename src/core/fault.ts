/**
 * One thing that is wrong with what a caller sent: where (JSON Pointer, RFC 6901), a stable code, and a
 * sentence that quotes the bad value with its unit and says what to do.
 */
export interface Fault {
  readonly pointer: string
  readonly code: string
  readonly message: string
}

/** Bad input, with every fault at once. Edges turn it into problem details or a GraphQL error. */
export class FaultyInput extends Error {
  readonly faults: readonly Fault[]

  constructor(faults: readonly Fault[]) {
    super(faults.map((fault) => `${fault.pointer}: ${fault.message}`).join('; '))
    this.name = 'FaultyInput'
    this.faults = faults
  }
}

/**
 * A rule of the trade or of the service that a request ran into: a stable kebab-case code and a sentence.
 * It never knows an HTTP status; edges/errors.ts translates.
 */
export class DomainError extends Error {
  readonly code: string
  /** Further facts for the caller, such as `nearest` for an unknown name. */
  readonly details: Readonly<Record<string, unknown>>

  constructor(code: string, message: string, details: Readonly<Record<string, unknown>> = {}) {
    super(message)
    this.name = 'DomainError'
    this.code = code
    this.details = details
  }
}

/**
 * What a caller sent, after its shape was checked: the value where the shape holds, the faults where it does not,
 * and the raw input, so that the rules of the trade can still be checked on what is readable and all faults be
 * named at once.
 */
export interface Submitted<T> {
  readonly raw: unknown
  readonly value: T | null
  readonly faults: readonly Fault[]
}
