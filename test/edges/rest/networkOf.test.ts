import { expect, test } from 'vitest'
import { networkOf } from '../../../src/edges/rest/networkOf.ts'

test.each([
  ['192.0.2.17', '192.0.2.17'],
  ['::ffff:192.0.2.17', '::ffff:192.0.2.17'],
  ['2001:db8:1:2:3:4:5:6', '2001:db8:1:2'],
  ['2001:db8:1:2::6', '2001:db8:1:2'],
  ['2001:db8::6', '2001:db8:0:0'],
  ['2001:db8::2:3:4:5:6', '2001:db8:0:2'],
  ['fe80::', 'fe80:0:0:0'],
  ['::1', '0:0:0:0'],
])('the address %s counts as %s', (address, network) => {
  expect(networkOf(address)).toBe(network)
})
