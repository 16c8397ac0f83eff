import type { RestCandidate } from './baseLoadEvaluation.ts'

const PRACTICE = 'common practice, no source'

/** What else draws power when nobody uses anything. Data, in the order in which it is worth looking. */
const CANDIDATES: readonly RestCandidate[] = [
  {
    code: 'refrigeration',
    isStandby: false,
    message:
      'Refrigerators and freezers run in cycles by themselves; on average they draw tens of watts. That is not standby, and they must stay on.',
    source: PRACTICE,
  },
  {
    code: 'circulation-pumps',
    isStandby: false,
    message:
      'Pumps of heating, hot water, ponds and aquaria run for hours or always. That is not standby; a heating technician can set their times.',
    source: PRACTICE,
  },
  {
    code: 'ventilation',
    isStandby: false,
    message: 'Ventilation, dehumidifiers and fans that run always. That is not standby.',
    source: PRACTICE,
  },
  {
    code: 'heating-by-itself',
    isStandby: false,
    message:
      'Electric water heaters, frost protection, trace heating and heat pumps that heat at night. That is not standby.',
    source: PRACTICE,
  },
  {
    code: 'night-charging',
    isStandby: false,
    message: 'Vehicles, storage heaters and batteries that charge at night. That is not standby.',
    source: PRACTICE,
  },
  {
    code: 'hard-wired',
    isStandby: true,
    message:
      'What has no plug to pull: door bells, intercoms, alarm panels, garage doors, smoke detectors, shutters, the transformers of lights, the meter’s own gateway. Leave what protects people on, and leave wiring to licensed electricians.',
    source: PRACTICE,
  },
  {
    code: 'devices-not-listed',
    isStandby: true,
    message:
      'Devices that the inventory does not list yet: look in the cellar, the attic, the garage, behind furniture, and for supplies without a device.',
    source: PRACTICE,
  },
]

/** @param hasRefrigeration true where the inventory lists something that cools already */
export const restCandidates = (hasRefrigeration: boolean): readonly RestCandidate[] =>
  CANDIDATES.filter(({ code }) => code !== 'refrigeration' || !hasRefrigeration)
