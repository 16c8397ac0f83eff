import type { BaseLoadOptions } from '../../core/baseLoad/baseLoadEvaluation.ts'
import { FaultyInput, type Submitted } from '../../core/fault.ts'
import { type BaseLoadQuery, baseLoadQuerySchema } from '../../schemas/baseLoad.ts'
import { queryFaults } from './submitted.ts'

/** The query's parameters as the options that JSON has in its body. */
export function optionsOfQuery(query: Submitted<BaseLoadQuery>): Submitted<BaseLoadOptions> {
  const { value } = query
  if (!value) return { raw: {}, value: null, faults: queryFaults(query) }
  const { inventoryExpectedW: expected, inventoryLowW: low, inventoryHighW: high, ...rest } = value
  const given = [expected, low, high].filter((figure) => figure !== undefined)
  if (expected === undefined || low === undefined || high === undefined)
    return { raw: {}, value: rest, faults: given.length === 0 ? [] : [incomplete] }
  return { raw: {}, value: { ...rest, inventoryPowerW: { expected, low, high } }, faults: [] }
}

const incomplete = {
  in: 'query' as const,
  pointer: '/inventoryExpectedW',
  code: 'required',
  message: 'inventoryExpectedW, inventoryLowW and inventoryHighW go together.',
}

const PARAMETERS = new Set(Object.keys(baseLoadQuerySchema.shape).concat('inventoryPowerW'))

/** Faults of options that came in the query say so; the others stay as they are. */
export function inQuery(error: unknown): unknown {
  if (!(error instanceof FaultyInput)) return error
  return new FaultyInput(
    error.faults.map((fault) => {
      const [, name = ''] = fault.pointer.split('/')
      if (!PARAMETERS.has(name)) return fault
      return {
        in: 'query',
        ...fault,
        pointer: name === 'inventoryPowerW' ? '/inventoryExpectedW' : fault.pointer,
      }
    }),
  )
}
