import type { Measure, MeasureKind } from '../core/savings/measure.ts'
import type { Deps } from './deps.ts'

/** What a household can do about standby, all or of one kind, in the order in which it is offered. */
export function listMeasures({ settings }: Deps, kind?: MeasureKind): readonly Measure[] {
  const all = [...settings.measures.values()]
  return kind === undefined ? all : all.filter((measure) => measure.kind === kind)
}
