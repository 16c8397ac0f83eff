import { createHash } from 'node:crypto'
import { z } from 'zod'
import { CHOSEN_KEY } from './core/access/keyText.ts'
import type { EstimateSettings } from './core/estimate/settings.ts'
import type { QuizLanguage, QuizLanguages } from './core/quiz/quizLanguage.ts'
import { originSchema } from './schemas/apiKey.ts'
import { householdSchema, supplySchema } from './schemas/household.ts'
import { code, figure, network, trueOrFalse, wholeNumber } from './schemas/settingForms.ts'

const { volts, tolerancePercent } = supplySchema.shape
const { weeksPerYear, coverageProbability } = householdSchema.shape

/** One variable of the environment: what it is for, what it may be, and what it is where it is not set. */
interface Setting<T> {
  readonly meaning: string
  readonly allowed: string
  readonly secret?: true
  readonly schema: z.ZodType<T, string>
  readonly fallback: T
  /** The default in words, where the value itself says too little. */
  readonly fallbackText?: string
}
const setting = <T>(described: Setting<T>) => described

/** Every variable that the service reads. The environment table of the README is this table. */
export const SETTINGS = {
  HOST: setting({
    meaning: 'Address to listen on',
    allowed: 'a host name or an IP address',
    schema: z.string().regex(/^[A-Za-z0-9.:-]{1,253}$/),
    fallback: '127.0.0.1',
  }),
  PORT: setting({
    meaning: 'Port to listen on; 0 takes any free one',
    allowed: 'a whole number from 0 to 65535',
    schema: wholeNumber(0, 65_535),
    fallback: 4000,
  }),
  DATA_DIR: setting({
    meaning: 'Folder of the embedded database; made where it is missing',
    allowed: 'a path',
    schema: z.string().max(4_096),
    fallback: './.data',
  }),
  DATABASE_URL: setting<string | null>({
    meaning: 'PostgreSQL database; when set, nothing is embedded and DATA_DIR is not used',
    allowed: 'a URL that starts with postgresql:// or postgres:// and names a host',
    secret: true,
    schema: z
      .string()
      .refine((text) => URL.canParse(text) && /^postgres(ql)?:\/\/./.test(text) && new URL(text).host !== ''),
    fallback: null,
    fallbackText: 'not set: the embedded database',
  }),
  BOOTSTRAP_ADMIN_KEY: setting<string | null>({
    meaning:
      "The key of the operator's admin, valid while it is set here. Where it is not set and no key was ever issued, " +
      'the start issues one and prints it once',
    allowed: '32 to 256 letters, digits, or any of _ -',
    secret: true,
    schema: z.string().regex(CHOSEN_KEY),
    fallback: null,
    fallbackText: 'not set',
  }),
  ANONYMOUS_ESTIMATES: setting({
    meaning:
      'Whether estimates are given to callers without a key. Where it is false, they and what else is worked out for a ' +
      'caller need a key with the scope estimate, and /graphql a key of any scope',
    allowed: 'true or false',
    schema: trueOrFalse,
    fallback: true,
  }),
  CORS_ORIGINS: setting<readonly string[]>({
    meaning:
      'Websites whose scripts may call POST /v1/estimates and the quiz; those of valid publishable keys may anyway',
    allowed: 'origins such as https://www.example.org with commas between them, at most 100',
    schema: z
      .string()
      .transform((text) => text.split(',').map((origin) => origin.trim()))
      .pipe(z.array(originSchema).max(100)),
    fallback: [],
    fallbackText: 'none',
  }),
  RATE_LIMIT_PER_MINUTE: setting({
    meaning:
      'Requests a minute that are answered for one secret key; 0 for as many as come. Each process counts for itself: ' +
      'of several behind one address, each answers so many',
    allowed: 'a whole number from 0 to 1000000',
    schema: wholeNumber(0, 1_000_000),
    fallback: 3_000,
  }),
  RATE_LIMIT_ANONYMOUS_PER_MINUTE: setting({
    meaning:
      'The same for callers without a key or with a publishable one, by their network: an IPv4 address, or 64 bits of an ' +
      'IPv6 address. Behind a proxy, set TRUSTED_PROXIES, or all of them count as one',
    allowed: 'a whole number from 0 to 1000000',
    schema: wholeNumber(0, 1_000_000),
    fallback: 600,
  }),
  TRUSTED_PROXIES: setting<readonly string[]>({
    meaning: "Proxies in front of the service, whose X-Forwarded-For is believed; nobody else's is",
    allowed: 'IP addresses, or networks such as 10.0.0.0/8, with commas between them, at most 100',
    schema: z
      .string()
      .transform((text) => text.split(',').map((network) => network.trim()))
      .pipe(z.array(network).max(100)),
    fallback: [],
    fallbackText: 'none',
  }),
  METRICS: setting({
    meaning:
      'Who may read /metrics, in the text format of Prometheus: whoever sends an admin key of the organisation that runs the ' +
      'service (key), anybody who reaches it (open), nobody (off: nothing is counted)',
    allowed: 'key, open or off',
    schema: z.enum(['key', 'open', 'off']),
    fallback: 'key',
  }),
  DOCS: setting({
    meaning: 'Whether there is a page at /docs that shows /openapi.json',
    allowed: 'true or false',
    schema: trueOrFalse,
    fallback: true,
  }),
  CATALOGUE_LANGUAGE: setting({
    meaning:
      "Language of the catalogue's names and notes, and of the quiz for whoever accepts none that there is",
    allowed: 'the tag of a language that has a file in seed/languages',
    schema: z.string().max(35),
    fallback: 'en',
  }),
  LOG_LEVEL: setting({
    meaning: 'Least severe level that is logged',
    allowed: 'one of fatal, error, warn, info, debug, trace, silent',
    schema: z.enum(['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent']),
    fallback: 'info',
  }),
  NODE_ENV: setting({
    meaning: 'development shows more in GraphQL errors; anything else is production',
    allowed: 'production, development or test',
    schema: z.enum(['production', 'development', 'test']),
    fallback: 'production',
  }),
  BODY_LIMIT_BYTES: setting({
    meaning: 'Largest request body that is read',
    allowed: 'a whole number from 1024 to 104857600',
    schema: wholeNumber(1_024, 104_857_600),
    fallback: 1_048_576,
    fallbackText: '1048576 (1 MiB)',
  }),
  IMPORT_LIMIT_BYTES: setting({
    meaning: 'Largest file that is imported into the catalogue',
    allowed: 'a whole number from 1024 to 104857600',
    schema: wholeNumber(1_024, 104_857_600),
    fallback: 16_777_216,
    fallbackText: '16777216 (16 MiB)',
  }),
  BASE_LOAD_LIMIT_BYTES: setting({
    meaning: 'Largest file of interval data that POST /v1/base-load/evaluate reads',
    allowed: 'a whole number from 1024 to 536870912',
    schema: wholeNumber(1_024, 536_870_912),
    fallback: 33_554_432,
    fallbackText: '33554432 (32 MiB)',
  }),
  DEFAULT_SUPPLY_VOLTS: setting({
    meaning: 'Nominal voltage where a request names none, V',
    allowed: 'a number from 90 to 260',
    schema: figure(volts),
    fallback: 230,
  }),
  DEFAULT_SUPPLY_TOLERANCE_PERCENT: setting({
    meaning: 'Half-width of the voltage about its nominal value, %',
    allowed: 'a number from 0 to 20',
    schema: figure(tolerancePercent),
    fallback: 6,
  }),
  DEFAULT_SUPPLY_HERTZ: setting({
    meaning: 'Frequency, Hz',
    allowed: '50 or 60',
    schema: z.enum(['50', '60']).transform(Number),
    fallback: 50,
  }),
  DEFAULT_TARIFF_CODE: setting({
    meaning: 'Tariff where a request names none; the default is an invented price',
    allowed: 'the code of a tariff that the service has',
    schema: code,
    fallback: 'sample-flat-eur',
  }),
  DEFAULT_EMISSION_FACTOR_CODE: setting({
    meaning: 'Emission factor where a request names none',
    allowed: 'the code of an emission factor that the service has',
    schema: code,
    fallback: 'world-2023',
  }),
  DEFAULT_WEEKS_PER_YEAR: setting({
    meaning: 'Weeks counted to a year; 52 is the common hand calculation',
    allowed: 'a number above 0 and up to 53',
    schema: figure(weeksPerYear.unwrap()),
    fallback: 365 / 7,
    fallbackText: '365/7',
  }),
  DEFAULT_COVERAGE_PROBABILITY: setting({
    meaning: 'Coverage probability of the intervals where a request names none',
    allowed: 'a number from 0.5 to 0.99',
    schema: figure(coverageProbability.unwrap()),
    fallback: 0.9,
  }),
} as const

type Settings = typeof SETTINGS
type Name = keyof Settings
/** The service's settings, by the names of their variables. */
export type Config = { readonly [N in Name]: Settings[N] extends Setting<infer T> ? T : never }

/** The environment holds settings that the service can't start with; the message names every one of them. */
export class ConfigError extends Error {
  constructor(problems: readonly string[]) {
    super(`The settings in the environment are wrong:\n${problems.map((line) => `  ${line}`).join('\n')}`)
    this.name = 'ConfigError'
  }
}

/** One wrong setting in words. A secret's value is never repeated. */
function wrongSetting(name: Name, value: string, allowed: string = SETTINGS[name].allowed): string {
  const described: Setting<unknown> = SETTINGS[name]
  const shown = described.secret
    ? '(value not shown, since it may hold a password)'
    : JSON.stringify(value.slice(0, 200))
  return `${name} is ${shown}: it must be ${allowed}.`
}

/**
 * The only reader of the environment. An empty variable counts as not set.
 * @throws ConfigError naming every wrong variable at once
 */
export function readConfig(environment: Readonly<Record<string, string | undefined>> = process.env): Config {
  const problems: string[] = []
  const values = Object.entries(SETTINGS).map(([name, described]) => {
    const text = environment[name]?.trim() ?? ''
    if (text === '') return [name, described.fallback]
    const result = described.schema.safeParse(text)
    if (!result.success) problems.push(wrongSetting(name as Name, text))
    return [name, result.data]
  })
  if (problems.length > 0) throw new ConfigError(problems)
  return Object.fromEntries(values) as Config
}

interface ReferenceLists {
  readonly tariffs: EstimateSettings['tariffs']
  readonly emissionFactors: EstimateSettings['emissionFactors']
  /** Of tariffs and emission factors; 1 where they are those that the service is shipped with. */
  readonly referenceRevision?: number
  readonly meterPresets: EstimateSettings['meterPresets']
  readonly limits: EstimateSettings['limits']
  readonly measures: EstimateSettings['measures']
  readonly cautions: EstimateSettings['cautions']
}

/**
 * What a request falls back on: the operator's settings, and the tariffs, emission factors, classes of meter, limits,
 * measures and cautions that the service has.
 * @throws ConfigError where a default is not among them
 */
export function settingsOf(
  config: Config,
  {
    tariffs,
    emissionFactors,
    referenceRevision = 1,
    meterPresets,
    limits,
    measures,
    cautions,
  }: ReferenceLists,
): EstimateSettings {
  const problems = [
    ...unknownCode('DEFAULT_TARIFF_CODE', config, tariffs),
    ...unknownCode('DEFAULT_EMISSION_FACTOR_CODE', config, emissionFactors),
  ]
  if (problems.length > 0) throw new ConfigError(problems)
  return {
    supply: {
      volts: config.DEFAULT_SUPPLY_VOLTS,
      tolerancePercent: config.DEFAULT_SUPPLY_TOLERANCE_PERCENT,
      hertz: config.DEFAULT_SUPPLY_HERTZ,
    },
    tariffs,
    defaultTariffCode: config.DEFAULT_TARIFF_CODE,
    emissionFactors,
    referenceRevision,
    defaultEmissionFactorCode: config.DEFAULT_EMISSION_FACTOR_CODE,
    meterPresets,
    limits,
    measures,
    cautions,
    weeksPerYear: config.DEFAULT_WEEKS_PER_YEAR,
    coverageProbability: config.DEFAULT_COVERAGE_PROBABILITY,
  }
}

/**
 * The languages of the quiz.
 * @throws ConfigError where that of the catalogue is not among them
 */
export function quizLanguagesOf(
  { CATALOGUE_LANGUAGE: catalogueLanguage }: Config,
  known: ReadonlyMap<string, QuizLanguage>,
): QuizLanguages {
  if (!known.has(catalogueLanguage))
    throw new ConfigError([
      wrongSetting('CATALOGUE_LANGUAGE', catalogueLanguage, `one of ${[...known.keys()].join(', ')}`),
    ])
  const words = JSON.stringify([catalogueLanguage, ...known.values()])
  const fingerprint = createHash('sha256').update(words).digest('hex').slice(0, 12)
  return { known, catalogueLanguage, fingerprint }
}

function unknownCode(
  name: 'DEFAULT_TARIFF_CODE' | 'DEFAULT_EMISSION_FACTOR_CODE',
  config: Config,
  known: ReadonlyMap<string, unknown>,
): string[] {
  return known.has(config[name])
    ? []
    : [wrongSetting(name, config[name], `one of ${[...known.keys()].join(', ')}`)]
}
