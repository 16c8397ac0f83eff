/** Means of neighbouring values, at most `most` blocks of equal length; what is left over at the end is left out. */
export function blockMeans(
  values: readonly number[],
  most: number,
): { readonly means: readonly number[]; readonly length: number } {
  const length = Math.ceil(values.length / most)
  if (length === 1) return { means: values, length }
  const means = Array.from({ length: Math.floor(values.length / length) }, (_, block) =>
    meanOf(values, block * length, (block + 1) * length),
  )
  return { means, length }
}

/** Mean of values[from] to values[to - 1]. */
export function meanOf(values: readonly number[], from = 0, to = values.length): number {
  let sum = 0
  for (let i = from; i < to; i++) sum += values[i]!
  return sum / (to - from)
}
