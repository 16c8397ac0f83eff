import { setImmediate } from 'node:timers/promises'

/** The longest line: a household of 500 devices with series of samples. */
const LONGEST_BYTES = 1_048_576
/** After so many lines other requests get their turn, since what is done with a line takes CPU time. */
const TURN = 8

/** A line of a text, or why it cannot be read. */
export interface TextLine {
  /** From 1. */
  readonly number: number
  readonly text: string | null
  readonly problem: 'too-long' | 'no-utf-8' | null
}

/**
 * The lines of a body as it arrives, one in memory at a time. By hand, since node:readline has no longest line and reads
 * ahead of whoever takes the lines. A line that is too long is passed over as it comes, not kept.
 */
export async function* textLines(body: AsyncIterable<Uint8Array>): AsyncGenerator<TextLine> {
  let [number, kept, length] = [0, [] as Uint8Array[], 0]
  const take = (): TextLine => {
    const line = lineOf(++number, kept, length)
    ;[kept, length] = [[], 0]
    return line
  }
  const add = (piece: Uint8Array) => {
    length += piece.length
    if (length <= LONGEST_BYTES) kept.push(piece)
    else kept = []
  }
  for await (const piece of body) {
    let from = 0
    for (let to = piece.indexOf(LINE_FEED); to !== -1; to = piece.indexOf(LINE_FEED, from)) {
      add(piece.subarray(from, to))
      from = to + 1
      yield take()
      if (number % TURN === 0) await setImmediate()
    }
    // A copy, since the rest of a large piece would be kept in memory with it.
    if (from < piece.length) add(Uint8Array.from(piece.subarray(from)))
  }
  if (length > 0) yield take()
}

const LINE_FEED = 0x0a

function lineOf(number: number, pieces: readonly Uint8Array[], length: number): TextLine {
  if (length > LONGEST_BYTES) return { number, text: null, problem: 'too-long' }
  try {
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: number > 1 }).decode(
      Buffer.concat(pieces),
    )
    return { number, text: text.endsWith('\r') ? text.slice(0, -1) : text, problem: null }
  } catch {
    return { number, text: null, problem: 'no-utf-8' } // Answered as a fault of this line.
  }
}
