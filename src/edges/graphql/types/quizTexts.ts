import type { QuizText } from '../../../core/quiz/quizLanguage.ts'
import { builder } from '../builder.ts'

export const QuizTextsType = builder.objectRef<Readonly<Record<QuizText, string>>>('QuizTexts').implement({
  description: 'Sentences of the quiz that belong to no device.',
  fields: (t) => ({
    introduction: t.exposeString('introduction', { description: 'How to begin.' }),
    countQuestion: t.exposeString('countQuestion', { description: 'Asks for the count.' }),
    hoursQuestion: t.exposeString('hoursQuestion', { description: 'Asks for the hours.' }),
    yearQuestion: t.exposeString('yearQuestion', { description: 'Asks for the year of manufacture.' }),
    readingQuestion: t.exposeString('readingQuestion', { description: 'Asks for a reading.' }),
    readingHelp: t.exposeString('readingHelp', { description: 'How to take one, and which figure to give.' }),
    alwaysOn: t.exposeString('alwaysOn', { description: 'Why hours are not asked.' }),
    sampleData: t.exposeString('sampleData', { description: 'That figures are invented.' }),
    worthDoing: t.exposeString('worthDoing', { description: 'Heading of what is worth doing.' }),
    mustStayOn: t.exposeString('mustStayOn', { description: 'Heading of what must stay on.' }),
    readFirst: t.exposeString('readFirst', {
      description: 'That a figure is typical and should be read first.',
    }),
    beforeSwitchingOff: t.exposeString('beforeSwitchingOff', {
      description: 'What to do before anything is switched off.',
    }),
  }),
})
