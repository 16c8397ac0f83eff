import type { Fault } from '../fault.ts'
import type { Provenance, TypicalDraw } from './category.ts'
import { orderFaults } from './orderFaults.ts'

/**
 * Rules within one typical draw: its figures stand in order, its years do too, and it says where it comes from
 * as its kind of provenance asks. Rules between the draws of a mode are in checkDrawYears.ts.
 */
export function checkDraw(draw: TypicalDraw, base: string): Fault[] {
  const { lowW, typicalW, highW } = draw
  return [
    ...orderFaults(['lowW', lowW], ['typicalW', typicalW], ['highW', highW], base, ' W'),
    ...yearOrderFaults(draw, base),
    ...provenanceFaults(draw.provenance, `${base}/provenance`),
  ]
}

function yearOrderFaults({ yearFrom, yearTo }: TypicalDraw, base: string): Fault[] {
  if (yearFrom === null || yearTo === null || yearFrom <= yearTo) return []
  const message = `The years of manufacture run from ${yearFrom} to ${yearTo}, which is upside down; swap them.`
  return [{ pointer: `${base}/yearTo`, code: 'years-upside-down', message }]
}

function provenanceFaults({ kind, citation, n }: Provenance, base: string): Fault[] {
  const faults: Fault[] = []
  const add = (field: string, code: string, message: string) =>
    faults.push({ pointer: `${base}/${field}`, code, message })
  if (citation !== null && citation.trim() === '')
    add('citation', 'citation-blank', 'The citation is blank; name the source or leave it out (null).')
  if (kind === 'published' && citation === null)
    add(
      'citation',
      'citation-missing',
      'A published figure needs a citation: document, clause or table, year.',
    )
  if (kind === 'programme' && n === null)
    add('n', 'n-missing', 'A programme figure needs n, the number of readings behind it.')
  if (kind === 'sample' && citation !== null)
    add(
      'citation',
      'sample-with-citation',
      'A sample figure is invented and cites no source; its kind may be wrong.',
    )
  if (kind === 'sample' && n !== null)
    add(
      'n',
      'sample-with-n',
      'A sample figure is invented and has no readings behind it; leave n out (null).',
    )
  return faults
}
