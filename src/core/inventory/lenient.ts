/** Readers of raw input that answer "nothing" where the shape is wrong: the schema has already said so. */
export const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Elements keep their places, so that pointers stay right. */
export const list = (value: unknown): Record<string, unknown>[] =>
  Array.isArray(value) ? value.map((element) => (isObject(element) ? element : {})) : []

export const text = (value: unknown): string | undefined =>
  typeof value === 'string' ? value.trim() : undefined
