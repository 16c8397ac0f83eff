import type { Readable } from 'node:stream'
import { DomainError } from '../../core/fault.ts'

/**
 * A body as it arrives, up to a number of bytes. What is not read is left in the stream, not cut off with its socket, so
 * that a refusal still reaches the caller.
 * @throws DomainError body-too-large
 */
export async function* bytesUpTo(body: Readable, limitBytes: number): AsyncGenerator<Uint8Array> {
  let total = 0
  for await (const piece of body.iterator({ destroyOnReturn: false }) as AsyncIterable<Uint8Array>) {
    total += piece.length
    if (total > limitBytes)
      throw new DomainError(
        'body-too-large',
        `The body is larger than ${limitBytes} bytes, the most that is read here.`,
      )
    yield piece
  }
}
