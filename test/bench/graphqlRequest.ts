import type { Device, DeviceMode, Household } from '../../src/core/inventory/household.ts'
import type { Reading } from '../../src/core/readings/reading.ts'

const interval = '{ expected low high }'
const figures = ['powerW', 'energyKwhPerYear', 'costPerYear', 'emissionsKgCo2ePerYear'].map(
  (name) => `${name} ${interval}`,
)

/** Asks for what the REST answer says of devices, modes and the total. */
const QUERY = `query Estimate($input: EstimateInput!) {
  estimate(input: $input) {
    catalogueRevision referenceRevision coverageProbability currency sampleData
    devices {
      id category quantity confidence shareOfTotal ${figures.join(' ')}
      modes {
        mode hoursPerYear confidence powerW ${interval} apparentPowerVa ${interval} energyKwhPerYear ${interval}
      }
      warnings { code message }
    }
    total {
      confidence ${figures.join(' ')}
      confidenceShares { measured partlyMeasured declared assumed }
    }
    nextReadings { deviceId mode varianceShare }
    cautions { code message }
  }
}`

const enumName = (name: string) => name.toUpperCase().replaceAll('-', '_')
const exactOrRange = (value: unknown) => (typeof value === 'number' ? { exact: value } : { range: value })

function readingInput({ kind, ...figuresRead }: Reading) {
  const member = kind === 'apparent-power' ? 'apparentPower' : kind
  const powerFactor =
    'powerFactor' in figuresRead ? { powerFactor: exactOrRange(figuresRead.powerFactor) } : {}
  return { [member]: { ...figuresRead, ...powerFactor } }
}

const modeInput = ({ mode, hoursPerWeek, reading }: DeviceMode) => ({
  mode: enumName(mode),
  ...(hoursPerWeek !== undefined && { hoursPerWeek: exactOrRange(hoursPerWeek) }),
  ...(reading && { reading: readingInput(reading) }),
})

const deviceInput = ({ modes, ...device }: Device) => ({
  ...device,
  ...(modes && { modes: modes.map(modeInput) }),
})

/** The body of a GraphQL request that asks for the same estimate as the household sent to REST. */
export function graphqlRequest({ tariff, devices, ...household }: Household): string {
  const { kind, ...prices } = tariff!
  const input = { ...household, tariff: { [kind]: prices }, devices: devices.map(deviceInput) }
  return JSON.stringify({ query: QUERY, variables: { input } })
}
