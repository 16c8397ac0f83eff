import { expect, test } from 'vitest'
import { openMemoryRequestCounter } from '../../src/useCases/memoryRequestCounter.ts'

const at = (seconds: number) => new Date(1_800_000_000_000 + seconds * 1000)

test('counts each caller by itself, and says how long its window still runs', async () => {
  const counter = openMemoryRequestCounter()
  expect(await counter.count('one', 60, at(0))).toEqual({ requests: 1, secondsLeft: 60 })
  expect(await counter.count('one', 60, at(12.5))).toEqual({ requests: 2, secondsLeft: 48 })
  expect(await counter.count('other', 60, at(12.5))).toEqual({ requests: 1, secondsLeft: 60 })
})

test('a window ends with its last second, and the next one begins with the next request', async () => {
  const counter = openMemoryRequestCounter()
  await counter.count('one', 60, at(0))
  expect(await counter.count('one', 60, at(59.999))).toEqual({ requests: 2, secondsLeft: 1 })
  expect(await counter.count('one', 60, at(60))).toEqual({ requests: 1, secondsLeft: 60 })
})

test('a clock that is set back makes nobody wait for longer than a window', async () => {
  const counter = openMemoryRequestCounter()
  await counter.count('one', 60, at(3_600))
  expect(await counter.count('one', 60, at(0))).toEqual({ requests: 1, secondsLeft: 60 })
})

test('holds so many callers and no more, and forgets those first that were not counted longest', async () => {
  const counter = openMemoryRequestCounter(2)
  await counter.count('first', 60, at(0))
  await counter.count('second', 60, at(1))
  await counter.count('first', 60, at(2))
  await counter.count('third', 60, at(3))
  expect((await counter.count('first', 60, at(4))).requests).toBe(3)
  expect((await counter.count('second', 60, at(5))).requests).toBe(1)
})
