import type { Window } from '../stores/window.ts'

/**
 * Which revisions a window shows, newest first, of so many that are numbered from 1 without a gap: this can be said without
 * asking the database. None where `from` is above `to`.
 */
export function numbersIn(total: number, { after, before, limit, keep }: Window<number>) {
  const newest = Math.min(after === undefined ? total : after - 1, total)
  const oldest = Math.max(before === undefined ? 1 : before + 1, 1)
  const [from, to] =
    keep === 'first'
      ? [Math.max(oldest, newest - limit + 1), newest]
      : [oldest, Math.min(newest, oldest + limit - 1)]
  return { from, to, hasBefore: to < total, hasAfter: from > 1 }
}
