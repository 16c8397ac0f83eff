import { z } from 'zod'

export const warningSchema = z.strictObject({ code: z.string(), message: z.string() }).meta({ id: 'Warning' })
