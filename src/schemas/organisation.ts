import { z } from 'zod'
import type { Organisation } from '../core/access/organisation.ts'
import { shortText } from './common.ts'
import { pageOf, pageQuery } from './paging.ts'

export const organisationCode = z
  .string()
  .max(64)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'must be words of small letters and digits, joined by hyphens')

export const newOrganisationSchema = z
  .strictObject({ code: organisationCode, name: shortText })
  .meta({ id: 'NewOrganisation' })

const organisationSchema = z
  .strictObject({ code: z.string(), name: z.string(), madeAt: z.iso.datetime() })
  .meta({ id: 'Organisation', description: 'A utility, a programme or the operator of the service' })

export const organisationListSchema = pageOf(organisationSchema).meta({ id: 'OrganisationList' })
export const organisationQuerySchema = z.strictObject(pageQuery)
export const organisationAnswerSchema = organisationSchema

/** An organisation as answers show it. */
export const showOrganisation = ({
  code,
  name,
  madeAt,
}: Organisation): z.output<typeof organisationSchema> => ({
  code,
  name,
  madeAt: madeAt.toISOString(),
})
