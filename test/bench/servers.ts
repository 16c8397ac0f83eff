import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'

export interface Running {
  readonly url: string
  readonly pid: number | undefined
  stop(): Promise<void>
}

const READY_WITHIN_MS = 90_000
const root = fileURLToPath(new URL('../..', import.meta.url))

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1')
  await once(server, 'listening')
  const { port } = server.address() as AddressInfo
  server.close()
  await once(server, 'close')
  return port
}

async function stopped(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return
  child.kill('SIGTERM')
  await once(child, 'exit')
}

async function becomesReady(url: string, child: ChildProcess): Promise<void> {
  const deadline = Date.now() + READY_WITHIN_MS
  while (Date.now() < deadline) {
    if (child.exitCode !== null)
      throw new Error(`The service stopped with ${child.exitCode} before it was ready.`)
    const answer = await fetch(`${url}/health/ready`).catch((error: unknown) => error)
    if (answer instanceof Response && answer.ok) return
    await wait(200)
  }
  throw new Error(`The service was not ready within ${READY_WITHIN_MS / 1000} s.`)
}

/** The built service as an operator runs it, log and all, on an embedded database of its own unless `env` names another. */
export async function startService(env: Readonly<Record<string, string>> = {}): Promise<Running> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'))
  const port = await freePort()
  const child = spawn(process.execPath, ['dist/src/main.js'], {
    cwd: root,
    env: {
      PATH: process.env['PATH'],
      HOST: '127.0.0.1',
      PORT: String(port),
      DATA_DIR: folder,
      // The bench asks as often as it can.
      RATE_LIMIT_ANONYMOUS_PER_MINUTE: '0',
      ...env,
    },
    stdio: ['ignore', 'ignore', 'inherit'],
  })
  const url = `http://127.0.0.1:${port}`
  const stop = async () => {
    await stopped(child)
    rmSync(folder, { recursive: true, force: true })
  }
  await becomesReady(url, child).catch(async (error: unknown) => {
    await stop()
    throw error
  })
  return { url, pid: child.pid, stop }
}

/** A bare node:http server that gives the answers in turn. */
export async function startBare(answers: readonly string[]): Promise<Running> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'))
  const file = join(folder, 'answers.json')
  writeFileSync(file, JSON.stringify(answers))
  const child = spawn(process.execPath, ['--import', 'tsx', 'test/bench/bareServer.ts', file], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const [port] = (await once(child.stdout, 'data')) as [Buffer]
  const stop = async () => {
    await stopped(child)
    rmSync(folder, { recursive: true, force: true })
  }
  return { url: `http://127.0.0.1:${port.toString().trim()}`, pid: child.pid, stop }
}
