import type { FastifyReply } from 'fastify'
import type { ReferenceKind } from '../../../core/reference/referenceEntry.ts'
import type { EditedReference } from '../../../useCases/editReference.ts'
import { jsonAnswer, REFERENCE_HEADERS } from '../answers.ts'
import { referenceTag, tagHeaders } from '../conditional.ts'
import { withTagWhereStale } from '../currentTag.ts'
import type { ReferenceResource } from './resource.ts'

/** Answers an edit with the entry as it is now, and the tag that the next edit is based on. */
export async function sendEdited<K extends ReferenceKind>(
  reply: FastifyReply,
  { kind, path }: ReferenceResource<K>,
  edit: Promise<EditedReference<K>>,
  status: 200 | 201 = 200,
): Promise<FastifyReply> {
  const tagOf = (code: string, changedIn: number) => referenceTag(kind, code, changedIn)
  const { content, changedIn, referenceRevision } = await withTagWhereStale(edit, `stale-${kind}`, tagOf)
  const address = `${path}/${content.code}`
  return reply
    .code(status)
    .headers({
      ...tagHeaders({ tag: tagOf(content.code, changedIn), referenceRevision }),
      'cache-control': 'no-store',
      'content-location': address,
      ...(status === 201 && { location: address }),
    })
    .send(content)
}

const address = (one: string) => ({ type: 'string', description: `Address of ${one}` }) as const

/** How an edit is answered, for its OpenAPI entry. */
export const editedAnswer = ({ answer, example, one }: ReferenceResource, description: string) =>
  jsonAnswer(description, answer, example, { ...REFERENCE_HEADERS, 'Content-Location': address(one) })

export const createdAnswer = ({ answer, example, one }: ReferenceResource) =>
  jsonAnswer('What was made', answer, example, {
    ...REFERENCE_HEADERS,
    'Content-Location': address(one),
    Location: address(one),
  })
