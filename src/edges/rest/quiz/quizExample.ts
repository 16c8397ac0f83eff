import type { z } from 'zod'
import type { quizSchema } from '../../../schemas/quiz.ts'

/** The answer to GET /v1/quiz?categories=refrigerator,television. */
export const exampleQuiz = {
  catalogueRevision: 1,
  overlayRevision: 0,
  language: 'en',
  languages: [
    { language: 'de', name: 'Deutsch' },
    { language: 'en', name: 'English' },
  ],
  sampleData: true,
  sampleDataNotice:
    'Figures behind this are invented sample data: they show how the check works, not what devices draw.',
  texts: {
    introduction:
      'Walk from room to room and count what is plugged in, whether or not somebody is using it. Skip what you are not sure of; you can come back.',
    countQuestion: 'How many of these are plugged in?',
    hoursQuestion: 'How long is it plugged in while nobody uses it?',
    yearQuestion: 'From about which year is it?',
    readingQuestion: 'Have you read it with a meter?',
    readingHelp:
      'Plug a wattmeter between the outlet and the device, leave the device as it is when nobody uses it, and wait a minute. First look at the letters beside the figure: W, kWh, VA and A are different things. Give the figure under the same letters, of one device alone. Never open a plug, a cord or a device.',
    alwaysOn: 'This is on day and night, so the hours are not asked.',
    sampleData:
      'Figures behind this are invented sample data: they show how the check works, not what devices draw.',
    worthDoing: 'Most worth doing something about',
    mustStayOn: 'Must stay on',
    readFirst:
      'This is a typical figure and not yours: read it with a wattmeter first, if you can borrow one.',
    beforeSwitchingOff:
      'Before you switch something off: ask everybody in the home what hangs on it, look in its manual, and never switch off anything medical, an alarm, a refrigerator or freezer, or what keeps pipes from freezing.',
  },
  hoursChoices: [
    { choice: 'usual', label: 'I do not know', help: 'The usual hours of such a device are counted.' },
    {
      choice: 'nearly-always',
      label: 'Nearly always',
      help: 'It stays plugged in day and night, and is in use for two and a half hours a day at most.',
    },
    {
      choice: 'between-uses',
      label: 'All day, but it is used a lot',
      help: 'It stays plugged in, and is in use for two to eight hours a day. Those hours are not counted here.',
    },
    {
      choice: 'evenings',
      label: 'In the evenings only',
      help: 'At other times it is switched off at the outlet or unplugged.',
    },
    {
      choice: 'few-hours-a-day',
      label: 'A few hours a day',
      help: 'One to four hours a day plugged in without being used; else it is switched off at the outlet or unplugged.',
    },
    {
      choice: 'rarely',
      label: 'Rarely, I unplug it',
      help: 'It is plugged in when it is used, and hardly ever else.',
    },
  ],
  readings: [
    {
      kind: 'power',
      label: 'Watts (W)',
      help: 'The figure beside W. Where the meter shows VA, it is not watts: give it under VA. Where it jumps, take what it shows most of the time.',
      figures: [{ name: 'watts', label: 'Figure beside W', unit: 'W' }],
    },
    {
      kind: 'energy',
      label: 'Energy over some hours (kWh)',
      help: 'The figure beside kWh, and for how many hours the meter had been counting since it was set to zero. The surest reading for a device whose power goes up and down; a day is good.',
      figures: [
        { name: 'kilowattHours', label: 'Figure beside kWh', unit: 'kWh' },
        { name: 'durationHours', label: 'Hours that the meter had counted', unit: 'h' },
      ],
    },
    {
      kind: 'apparent-power',
      label: 'Volt-amperes (VA)',
      help: 'The figure beside VA. This is apparent power, and often several times the watts of a waiting device, so it gives a range. Where the meter also shows W, give that instead.',
      figures: [{ name: 'voltAmperes', label: 'Figure beside VA', unit: 'VA' }],
    },
    {
      kind: 'current',
      label: 'Amperes (A)',
      help: 'The figure beside A, such as 0.12; where it is in mA, divide it by 1000. Do not multiply it by the voltage: that would give VA, not watts. It gives a range. Where the meter also shows W, give that instead.',
      figures: [{ name: 'amperes', label: 'Figure beside A', unit: 'A' }],
    },
  ],
  modes: [
    { mode: 'off', label: 'Switched off at its own button' },
    { mode: 'standby', label: 'Waiting for its button, remote control or timer' },
    { mode: 'networked-standby', label: 'Waiting for the network' },
    { mode: 'idle', label: 'On, but not doing anything' },
    { mode: 'no-load', label: 'Charger with nothing attached' },
  ],
  groups: [
    {
      group: 'video',
      label: 'Television and video',
      questions: [
        {
          category: 'television',
          label: 'Television without internet',
          labelLanguage: 'en',
          help: 'Count those that stay plugged in while nobody uses them.',
          sampleData: true,
          count: { min: 0, max: 99, default: 1 },
          alwaysOn: false,
          keepPowered: null,
          yearMatters: true,
          hours: [
            { choice: 'usual', modes: [{ mode: 'standby' }] },
            {
              choice: 'nearly-always',
              modes: [{ mode: 'standby', hoursPerWeek: { low: 150.5, typical: 161, high: 168 } }],
            },
            {
              choice: 'between-uses',
              modes: [{ mode: 'standby', hoursPerWeek: { low: 112, typical: 136.5, high: 154 } }],
            },
            {
              choice: 'evenings',
              modes: [{ mode: 'standby', hoursPerWeek: { low: 21, typical: 31.5, high: 42 } }],
            },
            {
              choice: 'few-hours-a-day',
              modes: [{ mode: 'standby', hoursPerWeek: { low: 7, typical: 17.5, high: 28 } }],
            },
            { choice: 'rarely', modes: [{ mode: 'standby', hoursPerWeek: { low: 0, typical: 2, high: 7 } }] },
          ],
          readingModes: ['standby'],
        },
      ],
    },
    {
      group: 'kitchen',
      label: 'Kitchen',
      questions: [
        {
          category: 'refrigerator',
          label: 'Refrigerator',
          labelLanguage: 'en',
          help: 'Only its electronics and display are counted here; the cooling itself is not.',
          sampleData: true,
          count: { min: 0, max: 99, default: 1 },
          alwaysOn: true,
          keepPowered: {
            reason: 'refrigeration',
            reasonText: 'It keeps food or medicine cold.',
            note: 'Food spoils and medicines may be lost when it is off.',
            noteLanguage: 'en',
          },
          yearMatters: false,
          hours: [{ choice: 'usual', modes: [{ mode: 'idle' }] }],
          readingModes: ['idle'],
        },
      ],
    },
  ],
} satisfies z.output<typeof quizSchema>
