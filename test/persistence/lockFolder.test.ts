import { existsSync } from 'node:fs'
import { mkdtemp, readFile, readdir, rm, stat, utimes, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { lockFolder } from '../../src/persistence/lockFolder.ts'
import { type LockHolder, thisProcess } from '../../src/persistence/lockHolder.ts'

let folder: string
let file: string
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lock-'))
  file = join(folder, 'embedded.lock')
})
afterEach(() => rm(folder, { recursive: true }))

const SHORT_HEARTBEAT_MS = 100
const lock = (messages: string[] = []) =>
  lockFolder(folder, (message) => messages.push(message), SHORT_HEARTBEAT_MS)
const leave = async (changes: Partial<LockHolder>) =>
  writeFile(file, JSON.stringify({ ...(await thisProcess()), token: 'of another', ...changes }))
const holder = async () => JSON.parse(await readFile(file, 'utf8')) as LockHolder

/** No process has it: Linux counts to at most 4,194,304. */
const DEAD = 99_999_999

describe('the lock of a data folder', () => {
  it('names this process while it is held, and leaves nothing when it is given back', async () => {
    const release = await lock()
    expect(await holder()).toMatchObject({ pid: process.pid })
    await release()
    expect(await readdir(folder)).toEqual([])
  })

  it('that a living process holds is refused with what to do, and stays as it is', async () => {
    await leave({})
    await expect(lock()).rejects.toMatchObject({
      code: 'data-folder-in-use',
      message: expect.stringMatching(
        new RegExp(`^Process ${process.pid} on .* Stop that one, .*DATA_DIR.*DATABASE_URL`),
      ),
    })
    expect(await holder()).toMatchObject({ token: 'of another' })
    expect(await readdir(folder)).toEqual(['embedded.lock'])
  })

  it('that a dead process left is taken over', async () => {
    await leave({ pid: DEAD })
    const release = await lock()
    expect(await holder()).toMatchObject({ pid: process.pid })
    await release()
    expect(await readdir(folder)).toEqual([])
  })

  it('whose process id was given to another process since is taken over', async () => {
    await leave({ start: '1' })
    const release = await lock()
    expect((await holder()).start).toBe((await thisProcess()).start)
    await release()
  })

  it.each([
    ['of a process in another container', { place: 'elsewhere' }],
    ['of a process in another container that has this process id', { place: 'elsewhere', pid: process.pid }],
  ])('%s is taken over when nothing touches it any more', async (_, changes) => {
    await leave(changes)
    const messages: string[] = []
    const release = await lock(messages)
    expect(messages).toEqual([expect.stringContaining('Watching whether elsewhere still holds')])
    expect(await holder()).toMatchObject({ pid: process.pid })
    await release()
  })

  it('of a process in another container is refused while that process touches it', async () => {
    await leave({ place: 'elsewhere' })
    let seconds = 1_000_000
    const touching = setInterval(() => void utimes(file, ++seconds, seconds), SHORT_HEARTBEAT_MS / 10)
    try {
      await expect(lock()).rejects.toMatchObject({ code: 'data-folder-in-use' })
    } finally {
      clearInterval(touching)
    }
  })

  it('is touched at every heartbeat by its holder', async () => {
    const release = await lock()
    await utimes(file, 1_000_000, 1_000_000)
    while ((await stat(file)).mtimeMs === 1_000_000_000) await wait(10)
    await release()
  })

  it('that was not written to its end is taken over when nothing touches it any more', async () => {
    await writeFile(file, '{"pid": 1')
    const release = await lock()
    expect(await holder()).toMatchObject({ pid: process.pid })
    await release()
  })

  it.each([
    ['free', async () => undefined],
    ['left by a dead process', () => leave({ pid: DEAD })],
  ])('that is %s goes to exactly one of several that want it at once', async (_, prepare) => {
    await prepare()
    const outcomes = await Promise.allSettled([1, 2, 3, 4, 5, 6].map(() => lock()))
    const [won, lost] = [
      outcomes.filter((outcome) => outcome.status === 'fulfilled'),
      outcomes.filter((outcome) => outcome.status === 'rejected'),
    ]
    expect(won).toHaveLength(1)
    expect(lost.map(({ reason }) => reason.code)).toEqual(Array(5).fill('data-folder-in-use'))
    await won[0]!.value()
    expect(await readdir(folder)).toEqual([])
  })

  it('that was taken from its holder is told to it, and is not removed by it', async () => {
    let tell: (message: string) => void
    const told = new Promise<string>((resolve) => (tell = resolve))
    const release = await lockFolder(folder, (message) => tell(message), SHORT_HEARTBEAT_MS)
    await leave({})
    expect(await told).toMatch(/embedded\.lock no longer guards the embedded database .*restart this process/)
    await release()
    expect(existsSync(file)).toBe(true)
  })
})
