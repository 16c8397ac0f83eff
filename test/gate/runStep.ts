import { spawn } from 'node:child_process'
import { delimiter, resolve } from 'node:path'
import type { Step } from './steps.ts'

export interface Outcome {
  readonly name: string
  readonly passed: boolean
  readonly seconds: number
  readonly output: string
}

/** Runs one step with the project's own tools and keeps what it printed. A tool that cannot be started is a failure. */
export function runStep(step: Step, root: string): Promise<Outcome> {
  const [tool, ...args] = step.command
  const start = performance.now()
  const path = `${resolve(root, 'node_modules/.bin')}${delimiter}${process.env['PATH'] ?? ''}`
  const child = spawn(tool!, args, { cwd: root, env: { ...process.env, PATH: path, NO_COLOR: '1' } })
  const printed: string[] = []
  child.stdout.on('data', (chunk: Buffer) => printed.push(chunk.toString()))
  child.stderr.on('data', (chunk: Buffer) => printed.push(chunk.toString()))
  return new Promise((done) => {
    const end = (passed: boolean) =>
      done({
        name: step.name,
        passed,
        seconds: (performance.now() - start) / 1000,
        output: printed.join('').trim(),
      })
    child.on('error', (error) => {
      printed.push(error.message)
      end(false)
    })
    child.on('close', (code) => end(code === 0))
  })
}
