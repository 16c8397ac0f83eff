import { rectangularSum } from '../quantity/rectangularSum.ts'
import type { PowerOfReading } from './powerModel.ts'
import type { DeclaredReading } from './reading.ts'

/**
 * Power from a label or data sheet, W. A declared figure is a ceiling: rectangular between half of it and all of it
 * (the service's own assumption, no source; makers declare with a margin below limits that have a tolerance).
 */
export function powerOfDeclared({ watts }: DeclaredReading): PowerOfReading {
  return {
    power: { coefficient: 1, factors: [rectangularSum(0.75 * watts, 0.25 * watts)] },
    flag: 'declared',
    explanation: `P between ${watts / 2} W and ${watts} W: a declared ${watts} W is a ceiling, and the service assumes at least half of it.`,
    warnings: [],
  }
}
