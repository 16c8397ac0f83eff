import type { Fault } from '../fault.ts'

type Named = readonly [name: string, value: number]

/** Faults of three figures that must stand in the order low <= typical <= high, said at the field that breaks it. */
export function orderFaults(low: Named, typical: Named, high: Named, base: string, unit = ''): Fault[] {
  const fault = ([name, value]: Named, words: string): Fault => ({
    pointer: `${base}/${name}`,
    code: 'range-out-of-order',
    message: `${name} (${value}${unit}) must not be ${words} ${typical[0]} (${typical[1]}${unit}).`,
  })
  return [
    ...(low[1] > typical[1] ? [fault(low, 'above')] : []),
    ...(high[1] < typical[1] ? [fault(high, 'below')] : []),
  ]
}
