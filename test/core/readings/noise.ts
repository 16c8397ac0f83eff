import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { normalQuantile } from '../../../src/core/quantity/normal.ts'

/** Standard normal numbers that are the same in every run. */
export function noise(seed: number): () => number {
  const generator = xoroshiro128plus(seed)
  return () => normalQuantile(((generator.next() >>> 0) + 0.5) / 0x1_0000_0000)
}

/** A series in which each value keeps `memory` of the one before; its own standard deviation is 1. */
export function rememberingNoise(seed: number, memory: number): () => number {
  const next = noise(seed)
  const share = Math.sqrt(1 - memory * memory)
  let value = next()
  return () => (value = memory * value + share * next())
}

export const seriesOf = (count: number, valueAt: (i: number) => number): number[] =>
  Array.from({ length: count }, (_, i) => valueAt(i))
