import { expect, test } from 'vitest'
import { traceIdOf } from '../../../src/edges/rest/traceIdOf.ts'

const TRACE = '4bf92f3577b34da6a3ce929d0e0e4736'
const PARENT = '00f067aa0ba902b7'
const of = (traceparent?: string) => traceIdOf({ headers: { traceparent } })

test.each([
  ['version 00', `00-${TRACE}-${PARENT}-01`],
  ['any flags', `00-${TRACE}-${PARENT}-ff`],
  ['a later version', `01-${TRACE}-${PARENT}-00`],
  ['a later version that says more', `cc-${TRACE}-${PARENT}-01-what-the-future-is-like`],
  ['a later version that says nothing more', `cc-${TRACE}-${PARENT}-01-`],
])('the trace id is read from %s', (_, traceparent) => {
  expect(of(traceparent)).toBe(TRACE)
})

test.each([
  ['nothing', undefined],
  ['an empty one', ''],
  ['version ff', `ff-${TRACE}-${PARENT}-01`],
  ['a version of one digit', `0-${TRACE}-${PARENT}-01`],
  ['a version that is no number', `xx-${TRACE}-${PARENT}-01`],
  ['a trace id of zeros', `00-${'0'.repeat(32)}-${PARENT}-01`],
  ['a parent id of zeros', `00-${TRACE}-${'0'.repeat(16)}-01`],
  ['capital letters', `00-${TRACE.toUpperCase()}-${PARENT}-01`],
  ['a short trace id', `00-${TRACE.slice(1)}-${PARENT}-01`],
  ['a long trace id', `00-${TRACE}0-${PARENT}-01`],
  ['a short parent id', `00-${TRACE}-${PARENT.slice(1)}-01`],
  ['letters beyond f', `00-${TRACE.replace('f', 'g')}-${PARENT}-01`],
  ['no flags', `00-${TRACE}-${PARENT}`],
  ['flags of one digit', `00-${TRACE}-${PARENT}-1`],
  ['more than version 00 has', `00-${TRACE}-${PARENT}-01-more`],
  ['a dash more than version 00 has', `00-${TRACE}-${PARENT}-01-`],
  ['more without a dash in a later version', `cc-${TRACE}-${PARENT}-01.more`],
  ['other separators', `00.${TRACE}.${PARENT}.01`],
  ['two headers, which node joins', `00-${TRACE}-${PARENT}-01, 00-${TRACE}-${PARENT}-01`],
])('%s is ignored', (_, traceparent) => {
  expect(of(traceparent)).toBe(null)
})
