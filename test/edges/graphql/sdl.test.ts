import {
  type GraphQLNamedType,
  type GraphQLType,
  getNamedType,
  isEnumType,
  isInputObjectType,
  isInterfaceType,
  isIntrospectionType,
  isObjectType,
  isSpecifiedScalarType,
} from 'graphql'
import { expect, test } from 'vitest'
import { z } from 'zod'
import { schema } from '../../../src/edges/graphql/schema.ts'
import { categoryAnswerSchema } from '../../../src/schemas/category.ts'
import { estimateSchema } from '../../../src/schemas/estimate.ts'
import { estimateRequestSchema } from '../../../src/schemas/estimateRequest.ts'
import { namedEmissionFactorSchema } from '../../../src/schemas/emissionFactor.ts'
import { householdSchema } from '../../../src/schemas/household.ts'
import { namedTariffSchema } from '../../../src/schemas/tariff.ts'
import {
  tariffComparisonRequestSchema,
  tariffComparisonSchema,
} from '../../../src/schemas/tariffComparison.ts'
import { readingEvaluationSchema, readingToEvaluateSchema } from '../../../src/schemas/readingEvaluation.ts'
import { verificationRequestSchema } from '../../../src/schemas/verification.ts'
import { verificationSchema } from '../../../src/schemas/verificationAnswer.ts'
import { printedSchema } from './printedSchema.ts'

const COMMITTED = '../../../src/edges/graphql/schema.graphql'
const HOW_TO_UPDATE =
  'schema.graphql is not what the code makes now. Look at the difference as a caller would; to take it over: npx vitest run --config test/vitest.config.ts test/edges/graphql/sdl.test.ts -u'

test('the committed schema.graphql is the schema that is served', async () => {
  await expect(printedSchema(), HOW_TO_UPDATE).toMatchFileSnapshot(COMMITTED)
})

const ownTypes = Object.values(schema.getTypeMap()).filter(
  (type) => !isIntrospectionType(type) && !isSpecifiedScalarType(type),
)

test('every type, field, argument, input field and enum value has a description', () => {
  const bare = ownTypes.flatMap((type) => [type, ...partsOf(type)]).filter(({ description }) => !description)
  expect(bare.map(String)).toEqual([])
  expect(ownTypes.length).toBeGreaterThan(30)
})

function partsOf(type: GraphQLNamedType) {
  if (isEnumType(type)) return type.getValues()
  if (isInputObjectType(type)) return Object.values(type.getFields())
  if (isObjectType(type) || isInterfaceType(type))
    return Object.values(type.getFields()).flatMap((field) => [field, ...field.args])
  return []
}

test('fields of Query are nullable, so that one that fails leaves the others', () => {
  const query = schema.getQueryType()!
  expect(Object.values(query.getFields()).filter(({ type }) => String(type).endsWith('!'))).toEqual([])
})

/** The names of every field of an object schema, and below it, as paths. A union of kinds gives the names of all of them. */
function namesOf(given: z.ZodType, path = ''): string[] {
  const type = unwrapped(given)
  if (type instanceof z.ZodArray) return namesOf(type.element as z.ZodType, path)
  if (type instanceof z.ZodUnion) return type.options.flatMap((option) => namesOf(option as z.ZodType, path))
  if (!(type instanceof z.ZodObject)) return []
  return Object.entries(type.shape as Record<string, z.ZodType>).flatMap(([name, field]) => {
    const here = `${path}/${name.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase())}`
    return [here, ...namesOf(field, here)]
  })
}

function unwrapped(type: z.ZodType): z.ZodType {
  if (type instanceof z.ZodOptional || type instanceof z.ZodNullable || type instanceof z.ZodDefault)
    return unwrapped(type.unwrap() as z.ZodType)
  return type
}

/** The same of a GraphQL type; members of a @oneOf input are alternatives of the field that holds them. */
function pathsOf(type: GraphQLNamedType, path = ''): string[] {
  if (!isObjectType(type) && !isInterfaceType(type) && !isInputObjectType(type)) return []
  const below = Object.values(type.getFields()).flatMap((field) => {
    const named = getNamedType(field.type as GraphQLType)
    const here = isInputObjectType(type) && type.isOneOf ? path : `${path}/${field.name}`
    return [here, ...pathsOf(named, here)]
  })
  const members = isInterfaceType(type) ? schema.getPossibleTypes(type) : []
  return [...below, ...members.flatMap((member) => pathsOf(member, path))]
}

const distinct = (names: readonly string[]) => [...new Set(names)].sort()
/** `kind` tells REST's alternatives apart; GraphQL has types for that. */
const withoutKind = (names: readonly string[]) =>
  names.filter((name) => !/\/(tariff|tariffs|components|reading)\/kind$/.test(name))

test('an estimate has the same field names over both edges', () => {
  expect(distinct(pathsOf(schema.getType('Estimate')!))).toEqual(
    distinct(withoutKind(namesOf(estimateSchema))),
  )
})

test.each([
  ['HouseholdInput', householdSchema],
  ['EstimateInput', estimateRequestSchema],
])('%s has the same field names as a household over REST', (type, schemaOfRest) => {
  expect(distinct(pathsOf(schema.getType(type)!))).toEqual(distinct(withoutKind(namesOf(schemaOfRest))))
})

test('a reading and its evaluation have the same field names over both edges', () => {
  expect(distinct(pathsOf(schema.getType('ReadingEvaluationInput')!))).toEqual(
    distinct(withoutKind(namesOf(readingToEvaluateSchema))),
  )
  expect(distinct(pathsOf(schema.getType('ReadingEvaluation')!))).toEqual(
    distinct(namesOf(readingEvaluationSchema)),
  )
})

test('a category has the same field names over both edges, and id and revisions besides', () => {
  expect(distinct(pathsOf(schema.getType('Category')!))).toEqual(
    distinct([
      ...namesOf(categoryAnswerSchema),
      '/id',
      '/overlayRevision',
      '/catalogueRevision',
      '/changedInRevision',
    ]),
  )
})

test.each([
  ['NamedTariff', namedTariffSchema, ['/changedInRevision']],
  ['NamedEmissionFactor', namedEmissionFactorSchema, ['/changedInRevision']],
  ['TariffComparison', tariffComparisonSchema, []],
  // GraphQL names the alternative that REST tells by its being a text.
  ['TariffComparisonInput', tariffComparisonRequestSchema, []],
  ['Verification', verificationSchema, []],
  ['VerificationInput', verificationRequestSchema, []],
])('%s has the same field names over both edges', (type, schemaOfRest, besides) => {
  expect(distinct(pathsOf(schema.getType(type)!))).toEqual(
    distinct([...withoutKind(namesOf(schemaOfRest)), ...besides]),
  )
})
