import { describe, expect, test } from 'vitest'
import { inventoryOf } from '../../../src/core/inventory/intake.ts'
import { householdAt, summaryOf, visitsByDate } from '../../../src/core/inventory/inventory.ts'

const NOW = '2025-06-01T08:00:00Z'
const devices = [{ category: 'television' }]
const meters = [{ id: 'm1', percentOfReading: 1, counts: 1, resolution: 0.1 }]
const content = {
  reference: 'H-1',
  notes: 'Two floors.',
  weeksPerYear: 50,
  visits: [
    { date: '2025-09-01', devices },
    { date: '2024-03-01', notes: 'Rain.', meters, devices: [] },
    { date: '2025-03-01', devices: [] },
  ],
}

describe('the visits of an inventory', () => {
  test('are in the order of their dates, however they were sent; the earliest is the first', () => {
    expect(visitsByDate(content).map(({ date, kind }) => [date, kind])).toEqual([
      ['2024-03-01', 'first'],
      ['2025-03-01', 'follow-up'],
      ['2025-09-01', 'follow-up'],
    ])
  })

  test('are each a household of the terms that hold on all, with the visit’s own devices and meters', () => {
    expect(householdAt(content, content.visits[0]!)).toEqual({ weeksPerYear: 50, devices })
    expect(householdAt(content, content.visits[1]!)).toEqual({ weeksPerYear: 50, meters, devices: [] })
  })

  test('are summed up by their number and the last of them, none where there is none', () => {
    const kept = { id: 'i', version: 1, createdAt: NOW, updatedAt: NOW }
    expect(summaryOf({ ...kept, content })).toEqual({
      ...kept,
      reference: 'H-1',
      visits: 3,
      lastVisit: '2025-09-01',
    })
    expect(summaryOf({ ...kept, content: { ...content, visits: [] } })).toMatchObject({
      visits: 0,
      lastVisit: null,
    })
  })
})

describe('a household of an intake', () => {
  test('becomes an inventory with the one visit that it tells of', () => {
    const household = {
      reference: 'H-2',
      date: '2025-05-30',
      notes: 'Attic.',
      weeksPerYear: 50,
      meters,
      devices,
    }
    expect(inventoryOf(household, 'id-1', NOW)).toEqual({
      id: 'id-1',
      version: 1,
      createdAt: NOW,
      updatedAt: NOW,
      content: {
        reference: 'H-2',
        notes: 'Attic.',
        weeksPerYear: 50,
        visits: [{ date: '2025-05-30', meters, devices }],
      },
    })
  })

  test('without reference or date goes by its id and the day on which it comes in', () => {
    expect(inventoryOf({ devices }, 'id-1', NOW).content).toEqual({
      reference: 'id-1',
      visits: [{ date: '2025-06-01', devices }],
    })
  })
})
