import type { FaultList } from './baseLoadFaults.ts'

/** Bytes as they arrive; each piece is one or more. */
export type ByteStream = AsyncIterable<Uint8Array>

/**
 * A stream of UTF-8 as text, a byte order mark taken off.
 * @throws FaultyInput where the bytes are not UTF-8
 */
export async function* textOf(bytes: ByteStream, faults: FaultList): AsyncGenerator<string> {
  const decoder = new TextDecoder('utf-8', { fatal: true })
  for await (const piece of bytes) yield decode(decoder, faults, piece)
  const rest = decode(decoder, faults)
  if (rest !== '') yield rest
}

function decode(decoder: InstanceType<typeof TextDecoder>, faults: FaultList, piece?: Uint8Array): string {
  try {
    return piece ? decoder.decode(piece, { stream: true }) : decoder.decode()
  } catch (error) {
    if (!(error instanceof TypeError)) throw error
    return faults.stop(null, 'not-utf-8', 'The file is not UTF-8; save it as UTF-8 and send it again.')
  }
}
