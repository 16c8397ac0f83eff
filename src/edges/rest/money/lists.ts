import type { StoredList } from '../../listCursor.ts'

/** A list in the order of its codes; the place of a page is the code before it. */
const byCode = (name: string): StoredList<{ readonly code: string }, string> => ({
  name,
  form: /^[A-Za-z0-9_.:-]{1,64}$/,
  read: (text) => text,
  write: ({ code }) => code,
})

export const TARIFFS = byCode('tariffs')
export const EMISSION_FACTORS = byCode('emission-factors')
