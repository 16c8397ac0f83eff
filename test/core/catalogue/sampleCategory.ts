import type { Category, CategoryMode, TypicalDraw } from '../../../src/core/catalogue/category.ts'

/** An invented draw that follows every rule; give what a test wants otherwise. */
export function drawWith(changes: Partial<TypicalDraw> = {}): TypicalDraw {
  const provenance = { kind: 'sample', citation: null, n: null } as const
  return Object.freeze({
    yearFrom: null,
    yearTo: null,
    lowW: 1,
    typicalW: 2,
    highW: 4,
    provenance,
    ...changes,
  })
}

export function modeWith(changes: Partial<CategoryMode> = {}): CategoryMode {
  return Object.freeze({ mode: 'standby', defaultHoursPerWeek: 100, draws: [drawWith()], ...changes })
}

/** An invented category that follows every rule; give what a test wants otherwise. */
export function categoryWith(changes: Partial<Category> = {}): Category {
  return Object.freeze({
    code: 'lava-lamp',
    name: 'Lava lamp',
    group: 'lighting-and-smart-home',
    aliases: ['bubble light'],
    defaultQuantity: 1,
    retired: false,
    keepPowered: null,
    powerFactor: { low: 0.2, typical: 0.4, high: 0.6 },
    modes: [modeWith()],
    ...changes,
  })
}
