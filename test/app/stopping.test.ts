import { once } from 'node:events'
import { connect } from 'node:net'
import { describe, expect, test, vi } from 'vitest'
import { testApp } from '../helpers/testApp.ts'

describe('while the service stops', () => {
  test('a running request ends well, and a new one on its connection is told to come back later', async () => {
    let letDatabaseAnswer: (() => void) | null = null
    const { app, url } = await testApp({
      checkStore: () => new Promise((resolve) => (letDatabaseAnswer = resolve)),
    })
    const { hostname, port } = new URL(url)
    const socket = connect(Number(port), hostname).setEncoding('utf8')
    let answers = ''
    socket.on('data', (part: string) => (answers += part))
    const ended = new Promise((resolve) => socket.on('close', resolve))

    socket.write('GET /health/ready HTTP/1.1\r\nHost: x\r\n\r\n')
    const databaseAnswers = await vi.waitUntil(() => letDatabaseAnswer)
    const closing = app.close()
    await vi.waitUntil(() => !app.server.listening)
    const arrived = once(app.server, 'request')
    socket.write('GET /health/live HTTP/1.1\r\nHost: x\r\n\r\n')
    await arrived
    databaseAnswers()
    await Promise.all([closing, ended])

    const [running, late] = answers.split(/(?<=\})(?=HTTP\/1\.1 )/)
    expect(running).toMatch(/^HTTP\/1\.1 200 /)
    expect(late).toMatch(/^HTTP\/1\.1 503 /)
    expect(late).toMatch(/\r\nretry-after: 5\r\n/)
    expect(late).toMatch(/\r\nx-request-id: [0-9a-f-]{36}\r\n/)
    expect(late).toMatch(/\r\nConnection: close\r\n/i)
    expect(late).toContain('"code":"stopping"')
  })
})
