import { builder } from './builder.ts'
import './queries/categories.ts'
import './queries/category.ts'
import './queries/estimate.ts'
import './queries/node.ts'

/** The schema that is served. schema.graphql beside this file is its printed form, for readers and for checks. */
export const schema = builder.toSchema()
