import { printSchema } from 'graphql'
import { schema } from '../../../src/edges/graphql/schema.ts'

/** The schema as schema.graphql holds it: types and fields in the order of their names. */
export const printedSchema = (): string => `${printSchema(schema)}\n`
