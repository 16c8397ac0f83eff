const INTERVAL = '{ expected low high }'
const MONEY = `{ expected low high amounts ${INTERVAL} }`
const FIGURES = `powerW ${INTERVAL} energyKwhPerYear ${INTERVAL} costPerYear ${MONEY} emissionsKgCo2ePerYear ${INTERVAL}`

/** Asks GraphQL for everything that REST answers of an estimate. */
export const ESTIMATE_QUERY = `query ($input: EstimateInput!) {
  estimate(input: $input) {
    catalogueRevision overlayRevision referenceRevision coverageProbability currency sampleData
    used {
      supply { volts tolerancePercent hertz }
      tariff { currency ... on FlatTariff { pricePerKwh relativeUncertainty } }
      tariffSource standbyPricePerKwh priceBasis
      emissionFactor { kgCo2ePerKwh gridLoss relativeUncertainty }
      emissionFactorSource weeksPerYear annualUseKwh monthlyUseKwh methodVersion
    }
    devices {
      id label category categoryName catalogueLayer quantity confidence sampleData shareOfTotal
      keepPowered { reason note }
      ${FIGURES}
      modes {
        mode hoursPerYear hoursFrom confidence
        origin { kind detail explanation }
        powerW ${INTERVAL} apparentPowerVa ${INTERVAL} energyKwhPerYear ${INTERVAL}
      }
      warnings { code message }
    }
    total { ${FIGURES} confidence confidenceShares { measured partlyMeasured declared assumed } }
    nextReadings { deviceId mode varianceShare }
    warnings { code message }
    cautions { code message source }
  }
}`

type Fields = Readonly<Record<string, unknown>>
const camelCase = (text: string) => text.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase())
const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** A household as REST takes it, as GraphQL takes it: names of modes as enum values, kinds as the one member of a choice. */
export function graphqlInput(value: unknown, field = ''): unknown {
  if (Array.isArray(value)) return value.map((item) => graphqlInput(item))
  if (field === 'mode') return String(value).replaceAll('-', '_').toUpperCase()
  if (field === 'hoursPerWeek' || field === 'powerFactor')
    return isFields(value) ? { range: value } : { exact: value }
  if (!isFields(value)) return value
  const { kind, ...rest } = value
  const fields = Object.fromEntries(
    Object.entries(rest).map(([name, inner]) => [name, graphqlInput(inner, name)]),
  )
  return typeof kind === 'string' ? { [camelCase(kind)]: fields } : fields
}

/**
 * Everything that an estimate says, by its place in it, in words that are the same whether REST or GraphQL said it:
 * what is absent or null is left out, and so is a tariff's kind, which is a type in GraphQL.
 */
export function statementsOf(value: unknown, place = ''): ReadonlyMap<string, string | number | boolean> {
  if (value === null || value === undefined) return new Map()
  if (typeof value === 'string')
    return new Map([[place, /^[A-Z_]+$/.test(value) ? value.toLowerCase().replaceAll('_', '-') : value]])
  if (typeof value === 'number' || typeof value === 'boolean') return new Map([[place, value]])
  const inner = Object.entries(value).filter(([name]) => !(name === 'kind' && place === '/used/tariff'))
  return new Map(inner.flatMap(([name, part]) => [...statementsOf(part, `${place}/${camelCase(name)}`)]))
}
