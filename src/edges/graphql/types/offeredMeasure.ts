import type { OfferedMeasure } from '../../../core/savings/savingsPlan.ts'
import { builder } from '../builder.ts'
import { EXPECTED_LENGTH, SHORT_LIST } from '../limits.ts'
import { RangeType } from './common.ts'
import { SavingFiguresType } from './savingFigures.ts'
import { MeasureKindEnum } from './savingsEnums.ts'
import { WarningType } from './warning.ts'

export const OfferedMeasureType = builder.objectRef<OfferedMeasure>('OfferedMeasure').implement({
  description: 'A measure at one place, as if it were the only one.',
  fields: (t) => ({
    id: t.exposeString('id', { description: 'Name within this answer.' }),
    measureCode: t.exposeString('measureCode', { description: 'Code of the measure.' }),
    name: t.exposeString('name', { description: 'Name for people.' }),
    kind: t.expose('kind', { type: MeasureKindEnum, description: 'What is done.' }),
    deviceIds: t.stringList({
      description: 'Ids of the devices that it works on.',
      complexity: SHORT_LIST,
      resolve: ({ deviceIds }) => [...deviceIds],
    }),
    outlet: t.exposeString('outlet', { nullable: true, description: 'Outlet, where it is for one.' }),
    count: t.exposeInt('count', { description: 'Pieces, or devices.' }),
    needsHabit: t.exposeBoolean('needsHabit', { description: 'Whether somebody has to remember it.' }),
    persistence: t.expose('persistence', {
      type: RangeType,
      description: 'Share of what it could save that it saves over its life, 0 to 1.',
    }),
    chosen: t.exposeBoolean('chosen', { description: 'Whether it is in the plan.' }),
    sampleData: t.exposeBoolean('sampleData', { description: 'True where its own figures are invented.' }),
    source: t.exposeString('source', { description: 'Where they are from.' }),
    notes: t.field({
      type: [WarningType],
      description: 'What to mind at this place.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.warnings },
      resolve: ({ notes }) => notes,
    }),
    figures: t.expose('figures', { type: SavingFiguresType, description: 'What it saves and costs.' }),
  }),
})
