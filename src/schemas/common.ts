import { z } from 'zod'

/**
 * Building blocks of every schema. Bounds are wide enough for any household and narrow enough that a unit
 * mix-up or an attack is refused: 100 kW is a whole street's connection, 1,000 of one device is a building.
 */
export const LIMITS = {
  watts: 100_000,
  volts: 1_000,
  amperes: 1_000,
  kwh: 10_000_000,
  devices: 500,
  metersPerHousehold: 100,
  quantity: 1_000,
  labelLength: 120,
  yearFrom: 1950,
  yearTo: 2100,
} as const

export const positive = (max: number) => z.number().positive().max(max)
export const nonNegative = (max: number) => z.number().nonnegative().max(max)

/** Text that every store can keep and every page can show: no control characters but line breaks and tabs, no halves of a character. */
export const plainText = (max: number) =>
  z
    .string()
    .trim()
    .max(max)
    .regex(/^(?:[^\p{Cc}\p{Cs}]|[\t\n\r])*$/u, 'must hold no control characters')
export const shortText = plainText(LIMITS.labelLength).min(1)
export const localId = z
  .string()
  .regex(/^[A-Za-z0-9_.:-]{1,64}$/, 'must be 1 to 64 letters, digits, or any of _ . : -')

/** low <= typical <= high, said at the field that breaks it. */
const rangeOf = (value: z.ZodNumber) =>
  z.strictObject({ low: value, typical: value, high: value }).superRefine((range, context) => {
    if (range.low > range.typical)
      context.addIssue({
        code: 'custom',
        path: ['low'],
        message: `low (${range.low}) must not be above typical (${range.typical})`,
        params: { code: 'range-out-of-order' },
      })
    if (range.typical > range.high)
      context.addIssue({
        code: 'custom',
        path: ['high'],
        message: `high (${range.high}) must not be below typical (${range.typical})`,
        params: { code: 'range-out-of-order' },
      })
  })

export const numberOrRange = (value: z.ZodNumber) => z.union([value, rangeOf(value)])
