import { once } from 'node:events'
import { Client } from 'pg'
import { pause } from './pause.ts'

/** The channels that triggers tell of new revisions on: of the catalogue (migration 0003), of overlays (0004). */
const CHANNELS = ['catalogue_revision', 'overlay_revision']
const FIRST_PAUSE_MS = 100
const LONGEST_PAUSE_MS = 10_000

/** Listens until it is stopped; the promise is that nothing is under way any more. */
export type Listen = (onNotice: () => void) => () => Promise<void>

/**
 * Hears of new revisions as soon as they are committed, whichever process makes them. It has a session of its own at the
 * server, since LISTEN belongs to a session; one that is lost is opened again, after a pause that doubles with each
 * failure. Whoever listens is noticed at each opening, too: what came while nobody listened is told by no one.
 *
 * Behind a pooler that lends sessions for one transaction LISTEN hears nothing; so this only makes news come sooner, and
 * whoever needs them looks now and then as well (watchCatalogue.ts).
 */
export function listenForRevisions(
  databaseUrl: string,
  answerWithinMs: number,
  onTrouble: (message: string) => void,
): Listen {
  return (onNotice) => {
    const stopping = new AbortController()
    const listening = keepListening(stopping.signal)
    return async () => {
      stopping.abort()
      await listening
    }

    async function keepListening(signal: AbortSignal): Promise<void> {
      let failures = 0
      do {
        try {
          await listenOnce(signal, () => {
            failures = 0
            onNotice()
          })
        } catch (error) {
          onTrouble(`Not listening for edits by other processes, and trying again: ${String(error)}`)
        }
      } while (
        !signal.aborted &&
        (await pause(Math.min(FIRST_PAUSE_MS * 2 ** failures++, LONGEST_PAUSE_MS), signal))
      )
    }
  }

  /** Done when it is stopped; fails where the session cannot be opened or is lost. */
  async function listenOnce(signal: AbortSignal, onNotice: () => void): Promise<void> {
    const client = new Client({
      connectionString: databaseUrl,
      connectionTimeoutMillis: answerWithinMs,
      keepAlive: true,
      application_name: 'standby-draw-estimation listener',
    })
    // A client that fails without a listener would end the process.
    const lost = new Promise<never>((_done, fail) => {
      client.on('error', fail)
      client.on('end', () => fail(new Error('the session was closed')))
    })
    const over = new AbortController()
    const stopped = signal.aborted ? Promise.resolve() : once(signal, 'abort', { signal: over.signal })
    client.on('notification', onNotice)
    try {
      await Promise.race([open(client), lost, stopped])
      onNotice()
      await Promise.race([lost, stopped])
    } finally {
      over.abort()
      client.off('notification', onNotice)
      await client.end()
    }
  }
}

async function open(client: Client): Promise<void> {
  await client.connect()
  for (const channel of CHANNELS) await client.query(`LISTEN ${channel}`)
}
