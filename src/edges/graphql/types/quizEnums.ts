import type { HoursChoice } from '../../../core/quiz/hoursChoice.ts'
import type { QuizFigure } from '../../../core/quiz/quizReading.ts'
import { enumOf } from '../enumOf.ts'

export const HoursChoiceEnum = enumOf<HoursChoice>(
  'HoursChoice',
  'How long a device is plugged in while nobody uses it, as somebody would say it.',
  {
    usual: 'Not known: the usual hours of the catalogue.',
    'nearly-always': 'Day and night, and hardly ever in use.',
    'between-uses': 'Day and night, but in use for several hours a day, which do not count.',
    evenings: 'In the evenings only.',
    'few-hours-a-day': 'A few hours a day.',
    rarely: 'Hardly ever: it is unplugged.',
  },
)

export const QuizFigureEnum = enumOf<QuizFigure>('QuizFigure', 'A figure that the quiz can ask for.', {
  watts: 'Real power, W.',
  kilowattHours: 'Energy, kWh.',
  durationHours: 'Time that it was counted over, h.',
  voltAmperes: 'Apparent power, VA.',
  amperes: 'Current, A.',
})
