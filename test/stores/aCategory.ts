import type { Category } from '../../src/core/catalogue/category.ts'

/** An invented category for the tests of the stores, frozen so that no store can change what it is given. */
export function aCategory(code: string, changes: Partial<Category> = {}): Category {
  return deepFreeze({
    code,
    name: `Invented ${code}`,
    group: 'video',
    aliases: ['second name', 'Drittname mit Umlaut: Gerät'],
    defaultQuantity: 1,
    retired: false,
    keepPowered: null,
    powerFactor: { low: 0.3, typical: 0.5, high: 0.9 },
    modes: [
      {
        mode: 'standby',
        defaultHoursPerWeek: 140,
        draws: [
          {
            yearFrom: null,
            yearTo: 2012,
            lowW: 0.5,
            typicalW: 1.5,
            highW: 4,
            provenance: { kind: 'sample', citation: null, n: null },
          },
        ],
      },
    ],
    ...changes,
  })
}

function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null) for (const part of Object.values(value)) deepFreeze(part)
  return Object.freeze(value)
}
