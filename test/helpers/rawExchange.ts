import { connect } from 'node:net'

/** What a server writes to a connection on which exactly these bytes are sent, until it ends the connection. */
export function rawExchange(url: string, bytes: string | readonly string[]): Promise<string> {
  const { hostname, port } = new URL(url)
  return new Promise((resolve, reject) => {
    let answer = ''
    const socket = connect(Number(port), hostname, () => {
      for (const part of [bytes].flat()) socket.write(part)
    })
    socket.setEncoding('utf8')
    socket.on('data', (part: string) => (answer += part))
    socket.on('close', () => resolve(answer))
    socket.on('error', reject)
  })
}
