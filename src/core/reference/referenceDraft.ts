import type { NamedEmissionFactor } from '../emissions/emissionFactor.ts'
import { INVENTED } from '../invented.ts'
import type { NamedTariff } from '../money/tariff.ts'
import type { ReferenceContents, ReferenceKind } from './referenceEntry.ts'

interface Given {
  /** For the acts of retiring and restoring to change; as it is, or left out. */
  readonly retired?: boolean | undefined
  /** Follows from the source; what is sent is not looked at. */
  readonly sampleData?: boolean | undefined
}

/** Entries as an editor or a file of the seed gives them. */
export interface ReferenceDrafts {
  readonly tariff: Omit<NamedTariff, keyof Given> & Given
  readonly 'emission-factor': Omit<NamedEmissionFactor, 'retired'> & Pick<Given, 'retired'>
}

type Makers = {
  readonly [K in ReferenceKind]: (draft: ReferenceDrafts[K], retired: boolean) => ReferenceContents[K]
}
const MAKERS: Makers = {
  tariff: ({ code, name, tariff, source }, retired) => ({
    code,
    name,
    retired,
    tariff,
    source,
    sampleData: source.trim() === INVENTED,
  }),
  'emission-factor': ({ code, regionCode, region, kind, year, factor, gases, source, mark }, retired) => ({
    code,
    retired,
    regionCode,
    region,
    kind,
    year,
    factor,
    gases,
    source,
    mark,
  }),
}

/** The entry that a draft makes. */
export const contentFrom = <K extends ReferenceKind>(
  kind: K,
  draft: ReferenceDrafts[K],
  retired: boolean,
): ReferenceContents[K] => MAKERS[kind](draft, retired)
