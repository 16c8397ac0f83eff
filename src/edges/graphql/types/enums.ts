import type { Group, KeepPoweredReason, Mode, Provenance } from '../../../core/catalogue/category.ts'
import type { Layer } from '../../../core/catalogue/overlay.ts'
import type { Flag, ModeEstimate, Origin, TotalEstimate } from '../../../core/estimate/estimate.ts'
import type { Method } from '../../../core/inventory/household.ts'
import { enumOf } from '../enumOf.ts'

export const ModeEnum = enumOf<Mode>(
  'Mode',
  'What a device is doing while nobody uses it; terms of IEC 62301 and the EU ecodesign regulations.',
  {
    off: 'Connected to the mains and providing no function.',
    standby: 'Waiting to be switched on again, by remote control, sensor or timer, or showing information.',
    'networked-standby': 'Waiting to be woken through a network connection.',
    idle: 'On, but not doing its main function.',
    'no-load': 'An external power supply or charger with nothing attached to it.',
  },
)

export const GroupEnum = enumOf<Group>('Group', 'Part of the household that a category belongs to.', {
  video: 'Television and video.',
  audio: 'Sound.',
  computing: 'Computers and what is attached to them.',
  networking: 'Network equipment.',
  kitchen: 'Kitchen.',
  laundry: 'Washing and drying.',
  comfort: 'Heating, cooling, air and water.',
  charging: 'Chargers and power supplies.',
  'lighting-and-smart-home': 'Lighting and smart home.',
  'security-and-care': 'Security, alarms and care.',
  'hobby-and-garden': 'Hobby and garden.',
})

export const FlagEnum = enumOf<Flag>('Flag', 'How sure the origin of a figure is, strongest first.', {
  measured: 'Real power or energy was read, or current together with a power factor that was read.',
  'partly-measured':
    'Something was read, but a step was assumed: current or apparent power without a power factor.',
  declared: 'Read off a label or a data sheet.',
  assumed: 'A typical draw from the catalogue.',
})

export const TotalFlagEnum = enumOf<TotalEstimate['confidence']>(
  'TotalFlag',
  'How sure the origin of the total is, by the share of its energy.',
  {
    measured: 'At least 90 % of the energy is measured.',
    mixed: 'Neither measured nor assumed energy reaches 90 %.',
    assumed: 'At least 90 % of the energy is assumed.',
  },
)

export const KeepPoweredReasonEnum = enumOf<KeepPoweredReason>(
  'KeepPoweredReason',
  'Why a device must stay powered. Such a device is never suggested for switching off.',
  {
    medical: 'A medical device.',
    refrigeration: 'It keeps food or medicine cold.',
    'alarm-and-life-safety': 'An alarm, or equipment that protects life.',
    'network-for-others': 'Network equipment that other devices depend on.',
    'frost-protection': 'It protects from frost.',
    'scheduled-recording': 'It records or acts at set times.',
  },
)

export const ProvenanceKindEnum = enumOf<Provenance['kind']>(
  'ProvenanceKind',
  'Where a figure of the catalogue comes from.',
  {
    sample: 'Invented sample data.',
    published: 'Published; the citation says where.',
    programme: "From a programme's readings; n says how many.",
  },
)

export const OriginKindEnum = enumOf<Origin['kind']>('OriginKind', "Where a mode's power came from.", {
  reading: 'A reading that the caller sent.',
  catalogue: 'A typical draw from the catalogue.',
})

export const MethodEnum = enumOf<Method>('Method', 'How sums of uncertain figures are worked out.', {
  convolution: 'Numerical convolution: quick, and without chance.',
  'monte-carlo': 'Drawing at random from a seed, to check by.',
})

export const HoursFromEnum = enumOf<ModeEstimate['hoursFrom']>('HoursFrom', 'Who gave the hours of a mode.', {
  request: 'The request.',
  catalogue: "The catalogue's default.",
})

export const CatalogueLayerEnum = enumOf<Layer>('CatalogueLayer', 'Whose figures these are.', {
  shared: "The shared catalogue's, which everybody sees.",
  organisation: 'The own ones of your organisation, which it has laid over the shared catalogue.',
})
