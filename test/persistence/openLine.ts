import { createServer, connect, type Socket } from 'node:net'

/** A line to a server, on a port of its own, that can be held: what is sent meanwhile arrives after its release. */
export interface Line {
  readonly port: number
  hold(): void
  release(): void
  close(): Promise<void>
}

/** @param serverPort where the line leads to on this machine; null leads nowhere, and nothing is ever answered */
export async function openLine(serverPort: number | null): Promise<Line> {
  const callers = new Set<Socket>()
  const server = createServer((caller) => {
    callers.add(caller)
    caller.on('error', () => caller.destroy()).on('close', () => callers.delete(caller))
    if (serverPort === null) caller.resume()
    else join(caller, connect(serverPort, '127.0.0.1'))
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  return {
    port: (server.address() as { port: number }).port,
    hold: () => callers.forEach((caller) => caller.pause()),
    release: () => callers.forEach((caller) => caller.resume()),
    close: async () => {
      const closed = new Promise((resolve) => server.close(resolve))
      for (const caller of callers) caller.destroy()
      await closed
    },
  }
}

function join(caller: Socket, called: Socket): void {
  called.on('error', () => caller.destroy()).on('close', () => caller.destroy())
  caller.on('close', () => called.destroy())
  caller.on('data', (sent) => called.write(sent))
  called.on('data', (answered) => caller.write(answered))
}
