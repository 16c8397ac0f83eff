import type { Fault } from '../fault.ts'
import { isObject, list, text } from '../inventory/lenient.ts'

type Raw = Record<string, unknown>

/** Longer lists are refused by their shape; what lies beyond is not looked at, so that it costs nothing. */
const MOST_STRATA = 1_000
const MOST_HOMES = 100_000

/**
 * The rules of sampling, checked on whatever of the raw input can be read: strata have names of their own, homes belong
 * to one of them, nothing is said twice, at least two units were sampled in each stratum and no more than there are.
 */
export function checkSurvey(raw: unknown): Fault[] {
  if (!isObject(raw)) return []
  const strata = list(raw['strata']).slice(0, MOST_STRATA)
  const homes = list(raw['homes']).slice(0, MOST_HOMES)
  const names = strata.map((stratum) => text(stratum['name']))
  const clustered = strata.some((stratum) => stratum['clusters'] !== undefined)
  const ratio = raw['ratio'] !== undefined
  const domains = homes.some((home) => home['domain'] !== undefined)
  const members = byStratum(names, homes)
  const known = new Set(names)
  return [
    ...strata.flatMap((stratum, i) => {
      const own = members.get(names[i]) ?? []
      return checkStratum(stratum, `/strata/${i}`, { names, i, clustered, ratio, domains, homes: own })
    }),
    ...homes.flatMap((home, i) => checkHome(home, `/homes/${i}`, known, clustered, ratio)),
    ...(ratio ? checkAuxiliary(strata, homes) : []),
  ]
}

/** A ratio needs something to divide by. */
function checkAuxiliary(strata: readonly Raw[], homes: readonly Raw[]): Fault[] {
  const given = [
    ...homes.map((home) => home['auxiliary']),
    ...strata.map(({ sample }) =>
      isObject(sample) && isObject(sample['auxiliary']) ? sample['auxiliary']['mean'] : undefined,
    ),
  ].filter((value) => value !== undefined)
  if (given.length === 0 || given.some((value) => value !== 0)) return []
  const message =
    'The auxiliary quantity is 0 in every home, so nothing is in proportion to it; leave the ratio out.'
  return [{ pointer: '/ratio', code: 'auxiliary-zero', message }]
}

function byStratum(names: readonly (string | undefined)[], homes: readonly Raw[]) {
  const only = names.length === 1 ? names[0] : undefined
  const members = new Map<string | undefined, Raw[]>()
  for (const home of homes) {
    const name = text(home['stratum']) ?? only
    if (name === undefined) continue
    const own = members.get(name) ?? []
    members.set(name, own)
    own.push(home)
  }
  return members
}

interface Among {
  readonly names: readonly (string | undefined)[]
  readonly i: number
  readonly clustered: boolean
  readonly ratio: boolean
  readonly domains: boolean
  readonly homes: readonly Raw[]
}

function checkStratum(
  stratum: Raw,
  base: string,
  { names, i, clustered, ratio, domains, homes }: Among,
): Fault[] {
  const name = names[i]
  const sample = isObject(stratum['sample']) ? stratum['sample'] : null
  const faults: Fault[] = []
  const fault = (pointer: string, code: string, message: string) =>
    faults.push({ pointer: base + pointer, code, message })
  if (name !== undefined && names.indexOf(name) < i)
    fault('/name', 'name-twice', `The name "${name}" is already that of /strata/${names.indexOf(name)}.`)
  if (clustered && stratum['clusters'] === undefined)
    fault('/clusters', 'required', 'Clusters are given for another stratum; give them for each, or for none.')
  if (!clustered && stratum['homes'] === undefined)
    fault('/homes', 'required', 'Give the number of homes of the whole stratum, sampled or not.')
  if (sample && clustered)
    fault(
      '/sample',
      'summary-of-clusters',
      'A summary does not tell which homes are of one cluster; send homes.',
    )
  if (sample && homes.length > 0)
    fault('/sample', 'given-twice', `Give the summary or the homes of "${name!}", not both.`)
  if (sample && domains)
    fault('/sample', 'summary-of-domains', 'A summary does not tell which homes are of a domain; send homes.')
  if (sample && ratio && sample['auxiliary'] === undefined)
    fault('/sample/auxiliary', 'required', 'A ratio estimate needs the auxiliary quantity of every stratum.')
  return [...faults, ...checkSize(stratum, base, sample, homes, clustered)]
}

const whole = (value: unknown) => (typeof value === 'number' && Number.isInteger(value) ? value : null)

function checkSize(
  stratum: Raw,
  base: string,
  sample: Raw | null,
  homes: readonly Raw[],
  clustered: boolean,
): Fault[] {
  const unit = clustered ? 'clusters' : 'homes'
  const sampled = sample ? whole(sample['homes']) : sampledUnits(homes, clustered)
  const all = whole(stratum[unit])
  const people = whole(stratum['homes'])
  const name = text(stratum['name']) ?? ''
  const pointer = sample ? `${base}/sample/homes` : base
  if (sampled === null) return []
  if (sampled < 2) {
    const message = `The stratum "${name}" has ${sampled} sampled ${unit}; its spread cannot be known from fewer than two. Put it together with a stratum that is like it, or sample more of it.`
    return [{ pointer, code: 'too-few-sampled', message }]
  }
  if (all !== null && sampled > all) {
    const message = `The stratum "${name}" has ${sampled} sampled ${unit}, more than its ${all}.`
    return [{ pointer, code: 'more-than-population', message }]
  }
  if (clustered && people !== null && homes.length > people) {
    const message = `The stratum "${name}" has ${homes.length} sampled homes, more than its ${people}.`
    return [{ pointer, code: 'more-than-population', message }]
  }
  return []
}

const sampledUnits = (homes: readonly Raw[], clustered: boolean) =>
  clustered ? new Set(homes.map((home) => text(home['cluster']))).size : homes.length

function checkHome(
  home: Raw,
  base: string,
  names: ReadonlySet<string | undefined>,
  clustered: boolean,
  ratio: boolean,
): Fault[] {
  const stratum = text(home['stratum'])
  const faults: Fault[] = []
  const fault = (field: string, code: string, message: string) =>
    faults.push({ pointer: `${base}/${field}`, code, message })
  if (stratum === undefined && names.size > 1)
    fault('stratum', 'required', 'There are several strata, so each home names its own.')
  if (stratum !== undefined && !names.has(stratum))
    fault('stratum', 'unknown-stratum', `There is no stratum "${stratum}"; add it to strata.`)
  if (clustered && home['cluster'] === undefined)
    fault('cluster', 'required', 'Clusters were drawn, so each home names its own.')
  if (!clustered && home['cluster'] !== undefined)
    fault('cluster', 'clusters-unknown', 'Give clusters in strata: how many there are in the whole stratum.')
  if (ratio && home['auxiliary'] === undefined)
    fault('auxiliary', 'required', 'A ratio estimate needs the auxiliary quantity of every home.')
  return faults
}
