import js from '@eslint/js'
import graphqlPlugin from '@graphql-eslint/eslint-plugin'
import { defineConfig } from 'eslint/config'
import tseslint from 'typescript-eslint'

const schemaFile = 'src/edges/graphql/schema.graphql'
const code = ['src/**/*.ts', 'test/**/*.ts', 'prisma/*.ts']

/** What would make a result depend on anything but its arguments. */
const impureGlobals = [
  'console',
  'process',
  'performance',
  'crypto',
  'fetch',
  'setTimeout',
  'setInterval',
  'setImmediate',
]
const clockAndChance = [
  { object: 'Date', property: 'now', message: 'Time is an argument here, so that a result can be repeated.' },
  {
    object: 'Math',
    property: 'random',
    message: 'Chance is a seeded generator here, so that a result can be repeated.',
  },
]
const clockCalls = [
  { selector: 'NewExpression[callee.name="Date"][arguments.length=0]', message: 'Time is an argument here.' },
  { selector: 'CallExpression[callee.name="Date"]', message: 'Time is an argument here.' },
]
const environment = [
  {
    object: 'process',
    property: 'env',
    message: 'Only src/config.ts reads the environment; take the setting as an argument.',
  },
]
const environmentByAnotherName = [
  {
    selector: 'MemberExpression[object.property.name="process"][property.name="env"]',
    message: 'Only src/config.ts reads the environment.',
  },
]
const swallowedErrors = [
  {
    selector: 'CatchClause > BlockStatement[body.length=0]',
    message: 'An error must not be caught and dropped.',
  },
  {
    selector:
      'CallExpression[callee.property.name="catch"] > ArrowFunctionExpression > BlockStatement[body.length=0]',
    message: 'An error must not be caught and dropped.',
  },
]
const importsAsOnDisk = {
  regex: '^\\.{1,2}/.*\\.js$',
  message: 'An import names the file as it is on disk: .ts',
}
const skippedTests = [
  {
    selector:
      'MemberExpression[object.name=/^(it|test|describe)$/][property.name=/^(skip|only|todo|fails|skipIf|runIf)$/]',
    message: 'Every test runs, always.',
  },
]

export default defineConfig(
  {
    ignores: ['dist/', 'coverage/', 'reports/', '.stryker-tmp/', '.data/', 'src/persistence/generated/'],
  },
  {
    // No comment in the code can switch a rule off.
    linterOptions: { noInlineConfig: true, reportUnusedDisableDirectives: 'error' },
  },
  {
    files: code,
    extends: [
      js.configs.recommended,
      tseslint.configs.strictTypeChecked,
      tseslint.configs.stylisticTypeChecked,
    ],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: process.cwd() } },
    rules: {
      eqeqeq: 'error',
      'max-lines': ['error', { max: 300, skipBlankLines: true, skipComments: true }],
      'no-console': 'error',
      'no-restricted-syntax': ['error', ...swallowedErrors],
      '@typescript-eslint/no-restricted-imports': ['error', { patterns: [importsAsOnDisk] }],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      '@typescript-eslint/ban-ts-comment': [
        'error',
        { 'ts-ignore': true, 'ts-nocheck': true, 'ts-expect-error': true, 'ts-check': true },
      ],
      // An index into an array whose length was just checked is written a[i]!; noUncheckedIndexedAccess leaves no other short way.
      '@typescript-eslint/no-non-null-assertion': 'off',
      // A figure in a sentence is what most messages of this service are made of.
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/dot-notation': ['error', { allowIndexSignaturePropertyAccess: true }],
      // Routes and resolvers implement interfaces that speak of promises, whether or not this one waits.
      '@typescript-eslint/require-await': 'off',
    },
  },
  {
    files: ['src/**/*.ts'],
    ignores: ['src/config.ts'],
    rules: {
      'no-restricted-properties': ['error', ...environment],
      'no-restricted-syntax': ['error', ...swallowedErrors, ...environmentByAnotherName],
      '@typescript-eslint/no-restricted-imports': [
        'error',
        {
          paths: [
            {
              name: 'node:process',
              importNames: ['env'],
              message: 'Only src/config.ts reads the environment.',
            },
            { name: 'process', message: 'Use the global, or node:process.' },
          ],
          patterns: [importsAsOnDisk],
        },
      ],
    },
  },
  {
    // The same request against the same revision gives the same bytes: nothing on that way may look at a clock or throw dice.
    files: ['src/core/**/*.ts', 'src/schemas/**/*.ts', 'src/stores/**/*.ts', 'src/useCases/**/*.ts'],
    rules: {
      'no-restricted-globals': [
        'error',
        ...impureGlobals.map((name) => ({ name, message: 'The core is pure: pass it in.' })),
      ],
      'no-restricted-properties': ['error', ...environment, ...clockAndChance],
      'no-restricted-syntax': ['error', ...swallowedErrors, ...environmentByAnotherName, ...clockCalls],
    },
  },
  {
    // Coefficients stand as their source prints them, so that a reader can compare digit by digit.
    files: ['src/core/quantity/**/*.ts'],
    rules: { 'no-loss-of-precision': 'off' },
  },
  {
    // Data, written by `npm run documents`.
    files: ['src/edges/rest/**/example*.ts'],
    rules: { 'max-lines': 'off' },
  },
  {
    // What a person started at a terminal talks to that person.
    files: ['src/main.ts', 'src/demo.ts', 'test/gate/*.ts', 'test/bench/*.ts'],
    rules: { 'no-console': 'off' },
  },
  {
    files: ['test/**/*.ts'],
    rules: {
      'no-restricted-syntax': ['error', ...swallowedErrors, ...skippedTests],
      // "Mixing units does not compile" is a test, too; the comment must say what it expects.
      '@typescript-eslint/ban-ts-comment': [
        'error',
        {
          'ts-ignore': true,
          'ts-nocheck': true,
          'ts-expect-error': 'allow-with-description',
          minimumDescriptionLength: 10,
        },
      ],
      // supertest and JSON.parse hand out any: a test asserts on what came, it does not type it.
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
      '@typescript-eslint/no-unsafe-call': 'off',
    },
  },
  {
    files: [schemaFile],
    languageOptions: {
      parser: graphqlPlugin.parser,
      parserOptions: { graphQLConfig: { schema: schemaFile } },
    },
    plugins: { '@graphql-eslint': graphqlPlugin },
    rules: {
      ...graphqlPlugin.configs['flat/schema-recommended'].rules,
      ...graphqlPlugin.configs['flat/schema-relay'].rules,
      // Intervals, warnings and estimates are values: they have no identity, and an invented id would promise one.
      // What has one is a Relay Node, and the Relay tests hold those.
      '@graphql-eslint/strict-id-in-types': 'off',
      // The modes of a device and the devices of an estimate are parts of one value and bounded by it: nobody pages through them.
      '@graphql-eslint/relay-edge-types': ['error', { listTypeCanWrapOnlyEdgeType: false }],
    },
  },
)
