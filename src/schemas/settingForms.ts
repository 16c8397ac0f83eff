import { z } from 'zod'

// The forms that variables of the environment come in; config.ts says which variable has which.

export const wholeNumber = (min: number, max: number) =>
  z
    .string()
    .regex(/^\d{1,9}$/)
    .transform(Number)
    .pipe(z.int().min(min).max(max))
export const figure = (bounds: z.ZodType<number, number>) =>
  z
    .string()
    .regex(/^\d{1,9}(\.\d{1,9})?$/)
    .transform(Number)
    .pipe(bounds)
export const trueOrFalse = z.enum(['true', 'false']).transform((text) => text === 'true')
export const code = z.string().regex(/^[A-Za-z0-9_.:-]{1,64}$/)
/** An IP address, or a network in CIDR notation (RFC 4632); not everybody, since then anybody could name any address. */
export const network = z
  .union([z.ipv4(), z.ipv6(), z.cidrv4(), z.cidrv6()])
  .refine((text) => !text.endsWith('/0'))
