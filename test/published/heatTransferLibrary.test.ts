import { describe, expect, test } from 'vitest'
import { nusseltFacingDown } from '../../src/core/readings/convection/nusseltFacingDown.ts'
import { nusseltFacingUp } from '../../src/core/readings/convection/nusseltFacingUp.ts'
import { nusseltVertical } from '../../src/core/readings/convection/nusseltVertical.ts'
import { relativeError } from './support/printed.ts'

/*
 * Check values of a general heat-transfer library, V, git:CalebBell/ht@f9c60c4 ht/conv_free_immersed.py. It takes Pr and Gr;
 * Ra = Gr Pr.
 */
describe('ht, natural convection of immersed plates', () => {
  test('[V] vertical, Pr 0.69, Gr 2.63e9: 147.16185223770603', () => {
    expect(relativeError(nusseltVertical(0.69 * 2.63e9, 0.69), 147.16185223770603)).toBeLessThan(1e-14)
  })

  test('[V] hot side up, Pr 5.54, Gr 3.21e8: 181.73121274384457', () => {
    expect(relativeError(nusseltFacingUp(5.54 * 3.21e8, 5.54), 181.73121274384457)).toBeLessThan(1e-14)
  })

  test('[V] hot side down, Pr 5.54, Gr 3.21e8: 55.44564799362829', () => {
    expect(relativeError(nusseltFacingDown(5.54 * 3.21e8, 5.54), 55.44564799362829)).toBeLessThan(1e-14)
  })

  test('control: Grashof’s number in place of Rayleigh’s fails the check', () => {
    expect(relativeError(nusseltVertical(2.63e9, 0.69), 147.16185223770603)).toBeGreaterThan(0.1)
  })
})
