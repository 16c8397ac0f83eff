/**
 * What node:http can do at most: reads the body, JSON.parses it, and answers bytes that it was given. Its argument is a
 * JSON file with the answers, which it gives in turn. Prints its port once it listens.
 */
import { readFileSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'

const answers = (JSON.parse(readFileSync(process.argv[2]!, 'utf8')) as string[]).map((text) =>
  Buffer.from(text),
)
let turn = 0

const server = createServer((request, response) => {
  const chunks: Buffer[] = []
  request.on('data', (chunk: Buffer) => chunks.push(chunk))
  request.on('end', () => {
    JSON.parse(Buffer.concat(chunks).toString())
    turn = (turn + 1) % answers.length
    const answer = answers[turn]!
    response.writeHead(200, {
      'content-type': 'application/json; charset=utf-8',
      'content-length': answer.length,
    })
    response.end(answer)
  })
})
server.listen(0, '127.0.0.1', () => console.log((server.address() as AddressInfo).port))
