import { type ChildProcessByStdio, spawn } from 'node:child_process'
import { once } from 'node:events'
import type { Readable, Writable } from 'node:stream'
import { fileURLToPath } from 'node:url'

export interface OtherProcess {
  readonly pid: number
  /** Its first word. */
  readonly said: string
  /** Its exit code, once it has ended by itself. */
  readonly ended: Promise<number | null>
  /** Ends it as a crash does: without a chance to clean up. */
  kill(): Promise<void>
}

/** Starts a TypeScript program as a process of its own and waits for its first word. Fails with its error output where it ends before. */
export async function startProcess(program: URL, ...argv: string[]): Promise<OtherProcess> {
  const options = ['--import', import.meta.resolve('tsx'), fileURLToPath(program), ...argv]
  const child: ChildProcessByStdio<Writable, Readable, Readable> = spawn(process.execPath, options, {
    stdio: 'pipe',
  })
  const ended = once(child, 'close')
  let errors = ''
  child.stderr.setEncoding('utf8').on('data', (text: string) => (errors += text))
  const [said] = await Promise.race([
    once(child.stdout.setEncoding('utf8'), 'data') as Promise<[string]>,
    ended.then((): never => {
      throw new Error(`The process ended with ${String(child.exitCode ?? child.signalCode)}: ${errors}`)
    }),
  ])
  return {
    pid: child.pid!,
    said,
    ended: ended.then(() => child.exitCode),
    kill: async () => {
      child.kill('SIGKILL')
      await ended
    },
  }
}
