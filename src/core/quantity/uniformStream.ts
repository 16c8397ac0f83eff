import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'

/** A source of numbers that are uniform on 0..1, ends excluded. */
export type UniformStream = () => number

/** The generator's first figures still show that seeds differ in few bits. */
const SETTLING = 20

/**
 * The stream of random numbers of one input, always the same for the same seed and name, and independent of the
 * streams of all other names: what is drawn for a device is then also what is drawn for the total.
 *
 * 32 bits of xoroshiro128+ (pure-rand), seeded with a hash of seed and name: FNV-1a over the text, then the 32-bit
 * finaliser of MurmurHash3 (both public domain, constants from memory).
 */
export function uniformStream(seed: number, name: string): UniformStream {
  const generator = xoroshiro128plus(hashOf(`${seed} ${name}`))
  for (let i = 0; i < SETTLING; i++) generator.next()
  return () => ((generator.next() >>> 0) + 0.5) / 0x1_0000_0000
}

function hashOf(text: string): number {
  let hash = 0x811c9dc5
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193)
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b)
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35)
  return hash ^ (hash >>> 16)
}
