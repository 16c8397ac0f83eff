/** One part of the gate: a name to call it by, what it holds, and the command whose exit code decides. */
export interface Step {
  readonly name: string
  readonly holds: string
  readonly command: readonly string[]
  /** Lines of its output that are worth a look where it passed, too. */
  readonly tells?: RegExp
}

/** Before anything else: the other steps read the files that it makes. */
export const PREPARATION: Step = {
  name: 'client',
  holds: 'the database client is made from schema.prisma',
  command: ['prisma', 'generate', '--config', 'prisma/prisma.config.ts'],
}

/** Everything that a change has to pass, in the order in which a failure is cheapest to know. */
export const STEPS: readonly Step[] = [
  { name: 'types', holds: 'TypeScript, strict', command: ['tsc', '--noEmit', '--pretty', 'false'] },
  {
    name: 'lint',
    holds: 'code and GraphQL schema rules',
    command: [
      'eslint',
      '--config',
      '.config/eslint.config.js',
      '--max-warnings',
      '0',
      'src',
      'test',
      'prisma',
    ],
  },
  { name: 'format', holds: 'one way to lay out code', command: ['prettier', '--check', '.'] },
  {
    name: 'layers',
    holds: 'the dependency rule',
    command: ['depcruise', '--config', '.config/dependency-cruiser.cjs', 'src', 'test'],
  },
  {
    name: 'unused',
    holds: 'no dead file, export or package',
    command: ['knip', '--config', '.config/knip.jsonc'],
  },
  {
    name: 'documents',
    holds: 'the committed API documents are those that are served',
    command: ['tsx', 'test/gate/documents.ts'],
  },
  {
    name: 'openapi',
    holds: 'OpenAPI rules, recommended-strict',
    command: [
      'redocly',
      'lint',
      '--format',
      'stylish',
      '--config',
      '.config/redocly.yaml',
      'src/edges/rest/openapi.json',
    ],
  },
  {
    name: 'build',
    holds: 'what is shipped compiles without the tests',
    command: ['tsc', '-p', 'src/tsconfig.build.json'],
  },
  {
    name: 'tests',
    holds: 'the whole suite, with coverage of the core',
    command: ['vitest', 'run', '--config', 'test/vitest.config.ts', '--silent=passed-only', '--coverage'],
    tells: /^\s*(Tests|Lines|Branches)\s.*$/gm,
  },
]
