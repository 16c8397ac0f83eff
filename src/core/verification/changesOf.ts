import type { Mode } from '../catalogue/category.ts'
import type { Distribution } from '../quantity/distribution.ts'
import { sameHours } from './contrastsOf.ts'
import type { DevicePair, ModeAtVisit, ModePair } from './matchDevices.ts'
import { betterFigure, isRead } from './pairPowers.ts'
import type { Change } from './verification.ts'

/** What is different between two visits to one device, in plain words. */
export function changesOf({ before, after, isSame, modes }: DevicePair): Change[] {
  if (!after) return [ofDevice('device-removed', 'The device was there before and is not any more.')]
  if (!before) return [ofDevice('device-added', 'The device was not there before.')]
  const changes: Change[] = []
  if (before.category.code !== after.category.code)
    changes.push(
      ofDevice('category-changed', `${before.category.name} before, ${after.category.name} after.`),
    )
  changes.push(...ofYear(before.device.year, after.device.year))
  if (before.quantity !== after.quantity)
    changes.push(ofDevice('quantity-changed', `${before.quantity} before, ${after.quantity} after.`))
  return [...changes, ...modes.flatMap((mode) => changesOfMode(mode, isSame))]
}

const ofDevice = (code: Change['code'], message: string): Change => ({ code, mode: null, message })

function ofYear(before: number | undefined, after: number | undefined): Change[] {
  if (before === after) return []
  if (before === undefined || after === undefined) {
    const message = `The year of manufacture, ${before ?? after}, was known at one visit only.`
    return [ofDevice('year-known', message)]
  }
  return [ofDevice('year-changed', `Made in ${before} before, in ${after} after: another device.`)]
}

function changesOfMode({ mode, before, after }: ModePair, isSame: boolean): Change[] {
  const change = (code: Change['code'], message: string): Change => ({ code, mode, message })
  if (!before) return [change('mode-added', `Spends ${hoursOf(after!.terms.hoursPerWeek)} in ${mode} now.`)]
  if (!after) return [change('mode-removed', `Is not in ${mode} any more.`)]
  const changes: Change[] = []
  const [hours, hoursAfter] = [before.terms.hoursPerWeek, after.terms.hoursPerWeek]
  if (!sameHours(hours, hoursAfter))
    changes.push(
      change('hours-changed', `In ${mode}: ${hoursOf(hours)} before, ${hoursOf(hoursAfter)} after.`),
    )
  if (!sameValue(before.terms.schedule, after.terms.schedule))
    changes.push(change('schedule-changed', `In ${mode} at other hours of the week than before.`))
  return [...changes, ...changeOfFigure(before, after, mode, isSame)]
}

function changeOfFigure(before: ModeAtVisit, after: ModeAtVisit, mode: Mode, isSame: boolean): Change[] {
  if (!isRead(before) && isRead(after))
    return [
      { code: 'now-measured', mode, message: `The power in ${mode} was read at the second visit only.` },
    ]
  if (isRead(before) && !isRead(after))
    return [
      { code: 'no-longer-measured', mode, message: `The power in ${mode} was read at the first visit only.` },
    ]
  if (sameValue(before.given.reading, after.given.reading)) return []
  if (isSame && betterFigure(before, after))
    return [
      { code: 'better-known', mode, message: `The power in ${mode} is better known at one of the visits.` },
    ]
  return [{ code: 'reading-changed', mode, message: `The reading in ${mode} is another one than before.` }]
}

function hoursOf({ min, max }: Distribution): string {
  const shown = (hours: number) => Number(hours.toPrecision(4))
  return min === max ? `${shown(min)} h a week` : `${shown(min)} to ${shown(max)} h a week`
}

const sameValue = (one: unknown, other: unknown) => JSON.stringify(one) === JSON.stringify(other)
