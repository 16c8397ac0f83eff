import type { Response } from 'supertest'
import type { TestApp } from '../../helpers/testApp.ts'

/** Sends one operation, at once, and gives the whole HTTP answer. */
export async function post(
  app: TestApp,
  query: string,
  variables: object = {},
  operationName?: string,
): Promise<Response> {
  return app.send.post('/graphql').send({ query, variables, operationName })
}

/** The data of an operation that must succeed. */
export async function ask(app: TestApp, query: string, variables: object = {}) {
  const { status, body } = await post(app, query, variables)
  if (status !== 200 || body.errors) throw new Error(`Answered ${status}: ${JSON.stringify(body.errors)}`)
  return body.data
}

/** The errors of an operation that must fail, and its status. */
export async function refused(app: TestApp, query: string, variables: object = {}) {
  const { status, body } = await post(app, query, variables)
  if (!body.errors) throw new Error(`Answered ${status} without an error`)
  return { status, data: body.data, errors: body.errors }
}
