import type { Fault, Submitted } from '../core/fault.ts'

/** Faults of shape and of the trade together. A field that is unknown because it would hold a name is told why, once. */
export function allFaults({ faults }: Submitted<unknown>, rules: readonly Fault[]): readonly Fault[] {
  const told = new Set(rules.filter(({ code }) => code === 'personal-data').map(({ pointer }) => pointer))
  return [...faults.filter(({ code, pointer }) => code !== 'unknown-field' || !told.has(pointer)), ...rules]
}
