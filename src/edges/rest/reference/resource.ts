import { z } from 'zod'
import type { ReferenceDrafts } from '../../../core/reference/referenceDraft.ts'
import type { ReferenceContents, ReferenceKind } from '../../../core/reference/referenceEntry.ts'
import { namedEmissionFactorSchema } from '../../../schemas/emissionFactor.ts'
import {
  emissionFactorContentSchema,
  emissionFactorPatchSchema,
  tariffContentSchema,
  tariffPatchSchema,
} from '../../../schemas/referenceEdit.ts'
import { namedTariffSchema } from '../../../schemas/tariff.ts'
import { exampleEmissionFactor, exampleTariff } from '../money/examples.ts'

/** What the routes of tariffs and those of emission factors differ in. */
export interface ReferenceResource<K extends ReferenceKind = ReferenceKind> {
  readonly kind: K
  readonly path: string
  /** In words, with its article. */
  readonly one: string
  /** In the names of operations. */
  readonly name: string
  readonly content: z.ZodType<ReferenceDrafts[K]>
  readonly patch: z.ZodType
  readonly answer: z.ZodType
  readonly example: ReferenceContents[K]
  /** What an edit is refused for, in words. */
  readonly rules: string
}

export const TARIFF: ReferenceResource<'tariff'> = {
  kind: 'tariff',
  path: '/v1/tariffs',
  one: 'a tariff',
  name: 'Tariff',
  content: tariffContentSchema,
  patch: tariffPatchSchema,
  answer: namedTariffSchema,
  example: exampleTariff,
  rules: 'The rules are those on a tariff that a request brings.',
}

export const EMISSION_FACTOR: ReferenceResource<'emission-factor'> = {
  kind: 'emission-factor',
  path: '/v1/emission-factors',
  one: 'an emission factor',
  name: 'EmissionFactor',
  content: emissionFactorContentSchema,
  patch: emissionFactorPatchSchema,
  answer: namedEmissionFactorSchema,
  example: exampleEmissionFactor,
  rules:
    'A published factor needs its citation, and a grid has one of each kind for a year and what it counts.',
}

export const codeParameter = z.strictObject({
  code: z.string().describe('Code, such as sample-flat-eur or world-2023'),
})

/** What every edit of an entry that exists may answer. */
export const editProblems = ({ kind }: ReferenceResource) =>
  [
    `unknown-${kind}`,
    `stale-${kind}`,
    'malformed-condition',
    'precondition-required',
    'faulty-input',
    'address-too-long',
  ] as const
