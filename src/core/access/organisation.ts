import type { Caller } from './caller.ts'

/** A utility, a programme or the operator of the service: what keys, figures of its own and inventories belong to. */
export interface Organisation {
  /** Stable name in kebab-case. */
  readonly code: string
  readonly name: string
  readonly madeAt: Date
}

/** The organisation that runs the service; the first start makes it. */
export const OPERATOR = 'operator'

/** Whether the caller belongs to the organisation that runs the service, whose admins manage every organisation. */
export const isOperator = ({ organisation }: Caller) => organisation === OPERATOR
