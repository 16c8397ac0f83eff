import { SaxesParser, type SaxesTagNS } from 'saxes'
import type { FaultList } from './baseLoadFaults.ts'

/** What a reader of XML is told. Names are without prefix; `line` counts from 1. */
export interface XmlHandler {
  open(name: string, namespace: string, tag: SaxesTagNS): void
  text(text: string): void
  close(name: string, namespace: string, line: number): void
}

const MOST_DEPTH = 24
/** Characters without a tag: a longer text, comment or attribute has no place in interval data, and would fill memory. */
const LONGEST_PIECE = 262_144

/**
 * Reads XML piece by piece, as it arrives. Well-formedness is checked; a DOCTYPE is refused, so there are no entities but
 * the five of XML; depth, and what comes without a tag, is limited.
 */
export function openXml(handler: XmlHandler, faults: FaultList) {
  const parser = new SaxesParser({ xmlns: true })
  let depth = 0
  let sinceTag = 0
  const tag = () => (sinceTag = 0)
  parser.on('error', (error) => faults.stop(parser.line, 'not-well-formed', plain(error.message)))
  parser.on('doctype', () =>
    faults.stop(parser.line, 'doctype-refused', 'The file has a DOCTYPE, which is not read here; remove it.'),
  )
  parser.on('xmldecl', ({ encoding }) => {
    if (encoding !== undefined && encoding.toLowerCase() !== 'utf-8')
      faults.stop(1, 'not-utf-8', `The file says that it is ${encoding}; save it as UTF-8 and send it again.`)
  })
  parser.on('opentag', (opened) => {
    tag()
    if (++depth > MOST_DEPTH)
      faults.stop(parser.line, 'too-deep', `Elements lie more than ${MOST_DEPTH} deep in each other.`)
    handler.open(opened.local, opened.uri, opened)
  })
  parser.on('text', (text) => handler.text(text))
  parser.on('cdata', (text) => handler.text(text))
  parser.on('comment', tag)
  parser.on('closetag', (closed) => {
    tag()
    depth--
    handler.close(closed.local, closed.uri, parser.line)
  })
  return {
    write(piece: string): void {
      sinceTag += piece.length
      parser.write(piece)
      if (sinceTag > LONGEST_PIECE)
        faults.stop(
          parser.line,
          'piece-too-long',
          `More than ${LONGEST_PIECE} characters come without a tag.`,
        )
    },
    close: () => void parser.close(),
  }
}

/** The parser's message without the place that it starts with. */
const plain = (message: string) =>
  `The file is not well-formed XML: ${message.replace(/^(?:[^:]*:)?\d+:\d+: /, '')}`
