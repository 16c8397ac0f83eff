import { Decimal } from 'decimal.js'
import type { z } from 'zod'
import type { estimateSchema, intervalSchema } from '../schemas/estimate.ts'
import { wrapText } from './wrapText.ts'

type Estimate = z.output<typeof estimateSchema>
type Interval = z.output<typeof intervalSchema>
type Figures = Pick<
  Estimate['total'],
  'powerW' | 'energyKwhPerYear' | 'costPerYear' | 'emissionsKgCo2ePerYear'
>

/** Widths of the columns; sums of money have the most digits. */
const LABEL_WIDTH = 24
const FLAG_WIDTH = 16
const FIGURE_WIDTHS = [19, 19, 23, 19]
const WIDTH = 120
/** The readings that help most; those after them do little. */
const READINGS_SHOWN = 5

/** About three digits, as many as the figures are worth. */
const decimalsOf = (value: number) => (Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2)
const rounded = (value: number, decimals = decimalsOf(value)) =>
  new Decimal(value).toFixed(decimals, Decimal.ROUND_HALF_EVEN)
const percent = (share: number) => `${rounded(100 * share, 0)} %`

/** `expected (low-high)`, all rounded alike. */
const interval = ({ expected, low, high }: Interval, decimals = decimalsOf(expected)) =>
  `${rounded(expected, decimals)} (${rounded(low, decimals)}-${rounded(high, decimals)})`

/** Digits after the point of a currency's amounts (ISO 4217), such as 2 for EUR and 0 for JPY. */
const minorUnit = (currency: string) =>
  new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2

/** The answer to an estimate as lines for people, none wider than 120 characters. */
export function describeEstimate(estimate: Estimate): string[] {
  const labels = new Map(estimate.devices.map(({ id, label, categoryName }) => [id, label ?? categoryName]))
  return [
    ...table(estimate, labels),
    '',
    ...section('Share of the total energy by origin', shares(estimate)),
    ...section('Warnings', [
      ...estimate.devices.flatMap(({ id, warnings }) =>
        warnings.map(({ message }) => `${labels.get(id)}: ${message}`),
      ),
      ...estimate.warnings.map(({ message }) => message),
    ]),
    ...section(
      'What to read next with a wattmeter: it would remove most of what is unsure',
      estimate.nextReadings
        .slice(0, READINGS_SHOWN)
        .map(
          ({ deviceId, mode, varianceShare }, index) =>
            `${index + 1}. ${labels.get(deviceId)} in ${mode}: ${percent(varianceShare)} of the variance of the total`,
        ),
    ),
    ...section(
      'Cautions',
      estimate.cautions.map(({ message, source }) => `${message} (${source})`),
    ),
    ...section('Where the figures come from', origins(estimate)),
  ]
}

function table(estimate: Estimate, labels: ReadonlyMap<string, string>): string[] {
  const { currency, coverageProbability, devices, total } = estimate
  const rule = '-'.repeat(WIDTH)
  return [
    ...row('Device', 'Origin', ['W', 'kWh/yr', `${currency}/yr`, 'kg CO2e/yr']),
    ...row('', '', ['expected', 'expected', 'expected', 'expected']),
    ...row('', '', ['(low-high)', '(low-high)', '(low-high)', '(low-high)']),
    rule,
    ...devices.flatMap((device) => {
      const label = `${labels.get(device.id)}${device.quantity > 1 ? ` (${device.quantity})` : ''}`
      return row(label, device.confidence, figures(device, currency))
    }),
    rule,
    ...row('Total', total.confidence, figures(total, currency)),
    `From low to high is the interval that holds the true value with a probability of ${percent(coverageProbability)}.`,
  ]
}

const figures = (
  { powerW, energyKwhPerYear, costPerYear, emissionsKgCo2ePerYear }: Figures,
  currency: string,
) => [
  interval(powerW),
  interval(energyKwhPerYear),
  interval(costPerYear, minorUnit(currency)),
  interval(emissionsKgCo2ePerYear),
]

/** One row of the table; a label too long for its column goes on below. */
function row(label: string, flag: string, cells: readonly string[]): string[] {
  const [first = '', ...more] = wrapText(label, LABEL_WIDTH - 1)
  const start = first.padEnd(LABEL_WIDTH) + flag.padEnd(FLAG_WIDTH)
  return [
    start + cells.map((cell, index) => ` ${cell.padStart(FIGURE_WIDTHS[index]! - 1)}`).join(''),
    ...more.map((line) => `  ${line}`),
  ]
}

const shares = ({ total }: Estimate) => [
  Object.entries(total.confidenceShares)
    .map(([flag, share]) => `${flag} ${percent(share)}`)
    .join(', '),
]

function origins({ sampleData, used, catalogueRevision }: Estimate): string[] {
  const sample = 'The catalogue figures are invented sample data.'
  return [
    ...(sampleData ? [sample] : []),
    `Catalogue revision ${catalogueRevision}; tariff: ${used.tariffSource}; emission factor: ${used.emissionFactorSource}`,
  ]
}

function section(title: string, lines: readonly string[]): string[] {
  if (lines.length === 0) return []
  const indented = lines.flatMap((line) =>
    wrapText(line, WIDTH - 4).map((part, index) => (index === 0 ? `  ${part}` : `    ${part}`)),
  )
  return [`${title}:`, ...indented, '']
}
