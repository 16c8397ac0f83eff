import type { FastifyReply } from 'fastify'
import { categoryAnswerSchema } from '../../../schemas/category.ts'
import type { EditedCategory } from '../../../useCases/editCategory.ts'
import { CATEGORY_HEADERS, jsonAnswer } from '../answers.ts'
import { categoryTag, tagHeaders } from '../conditional.ts'
import { withTagWhereStale } from '../currentTag.ts'
import { exampleCategory } from '../examples.ts'

/** Answers an edit with the category as it is now, and the tag that the next edit is based on. */
export function sendEdited(
  reply: FastifyReply,
  edited: EditedCategory,
  status: 200 | 201 = 200,
): FastifyReply {
  const { category, changedIn, catalogueRevision } = edited
  const address = `/v1/categories/${category.code}`
  return reply
    .code(status)
    .headers({
      ...tagHeaders({ tag: categoryTag(category.code, changedIn), catalogueRevision }),
      'cache-control': 'no-store',
      'content-location': address,
      ...(status === 201 && { location: address }),
    })
    .send(category)
}

/** Tells whoever comes too late the tag to base the next attempt on, beside what changed. */
export const withCurrentTag = (edit: Promise<EditedCategory>): Promise<EditedCategory> =>
  withTagWhereStale(edit, 'stale-category', categoryTag)

/** How an edit is answered, for its OpenAPI entry. */
export const editedAnswer = (description: string) =>
  jsonAnswer(description, categoryAnswerSchema, exampleCategory, {
    ...CATEGORY_HEADERS,
    'Content-Location': { type: 'string', description: 'Address of the category' },
  })

export const createdAnswer = jsonAnswer('The category that was made', categoryAnswerSchema, exampleCategory, {
  ...CATEGORY_HEADERS,
  'Content-Location': { type: 'string', description: 'Address of the category' },
  Location: { type: 'string', description: 'Address of the category' },
})
