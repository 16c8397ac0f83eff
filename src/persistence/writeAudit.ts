import type { NewAuditEvent } from '../core/access/auditEvent.ts'
import { Prisma } from './generated/client.ts'

/** Adds an event to the audit trail, in the transaction of the write that it speaks of: both are stored, or neither. */
export async function writeAudit(transaction: Prisma.TransactionClient, event: NewAuditEvent): Promise<void> {
  const { at, origin, action, subjectKind, subjectId } = event
  await transaction.auditEvent.create({
    data: {
      at,
      organisation: origin?.caller.organisation ?? null,
      keyId: origin?.caller.keyId ?? null,
      requestId: origin?.requestId ?? null,
      action,
      subjectKind,
      subjectId,
      concerns: event.concerns ?? origin?.caller.organisation ?? null,
      before: jsonOf(event.before),
      after: jsonOf(event.after),
    },
  })
}

/** As JSON writes it: a Date becomes its ISO text, a field that is undefined is left out. */
const jsonOf = (value: unknown) =>
  value === null || value === undefined
    ? Prisma.DbNull
    : (JSON.parse(JSON.stringify(value)) as Prisma.InputJsonValue)
