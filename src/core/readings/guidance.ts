import type { Caution } from '../cautions/caution.ts'
import type { Reading } from './reading.ts'

type Kind = Reading['kind']
const NO_SOURCE = 'common practice, no source'

const note = (code: string, message: string, source: string): Caution => ({ code, message, source })

const SETTLE = note(
  'let-it-settle',
  'Put the device into the mode, leave it alone for at least five minutes, and only then read.',
  'IEC 62301 (edition 1), as quoted in training material',
)
const POWER_FACTOR = note(
  'read-the-power-factor',
  'Standby loads of 1 to 10 W have a very poor power factor, sometimes below 0.25: read watts with a plug-in wattmeter wherever the plug can be reached.',
  'LBNL, standby.lbl.gov/meters.html',
)

/** How to read so that the figure is worth having, by kind. */
const GUIDANCE: Readonly<Record<Kind, readonly Caution[]>> = {
  power: [
    SETTLE,
    note(
      'meter-energy-where-it-moves',
      'Where the figure keeps moving, do not guess a mean by eye: meter the energy over some hours.',
      'FEMP, Measuring Standby Power',
    ),
  ],
  energy: [
    SETTLE,
    note(
      'meter-long-enough',
      'Go on until the register shows at least fifty of its last steps, so that one step more or less is below 2 %.',
      NO_SOURCE,
    ),
  ],
  samples: [
    note(
      'sample-long-enough',
      'Sample at least once a second for at least 15 minutes; where the power repeats itself, for six cycles and more.',
      'IEC 62301:2011 5.3.2',
    ),
  ],
  current: [
    note(
      'one-conductor-only',
      'Put one conductor alone through the jaw. With both, their fields cancel and the meter shows about zero.',
      'Instrument makers’ application notes',
    ),
    note(
      'use-the-ten-turn-window',
      'Below about 1 A use the x10 window of a line splitter, and give loops: 10 with the figure as the meter shows it.',
      'Instrument makers’ application notes',
    ),
    note(
      'use-true-rms',
      'Use a true-RMS meter: an average-responding one is wrong for the bursts that small supplies draw.',
      'Instrument makers’ application notes',
    ),
    POWER_FACTOR,
  ],
  'apparent-power': [SETTLE, POWER_FACTOR],
  declared: [
    note(
      'find-the-figure-of-the-mode',
      'Take the figure that the data sheet gives for this mode; the rating plate gives the most that the device takes in use.',
      NO_SOURCE,
    ),
  ],
  thermal: [
    note(
      'measure-each-face',
      'Read each face that is warm as a reading of its own, after the device has been in the mode for an hour.',
      NO_SOURCE,
    ),
    note('read-the-plug-instead', 'Where the plug can be reached, a plug-in wattmeter says more.', NO_SOURCE),
  ],
}

export const guidanceOf = (kind: Kind): readonly Caution[] => GUIDANCE[kind]
