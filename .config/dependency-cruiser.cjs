/**
 * The dependency rule of DEVELOPERS.md, line by line: which files and which npm packages a layer may import, and whether it
 * may import what is built into Node. Whatever is not named is forbidden. Imports of types alone count as imports.
 */
const COMPOSITION_ROOT = '^src/((main|app|config|demo|log|readSeed|startService)\\.ts$|demo/)'
const FAULTS = '^src/core/fault\\.ts$'
const DATABASE = ['@prisma/', 'prisma', 'pg', '@electric-sql/', 'pglite-prisma-adapter']

const LAYERS = [
  {
    name: 'core',
    files: ['^src/core/'],
    packages: ['decimal.js', 'pure-rand', 'fastest-levenshtein'],
    why: 'The core is arithmetic on its arguments: no I/O, no framework.',
  },
  {
    name: 'stores',
    files: ['^src/stores/', '^src/core/'],
    packages: [],
    why: 'A store is an interface over what the core knows.',
  },
  {
    name: 'schemas',
    files: ['^src/schemas/', '^src/core/'],
    packages: ['zod', 'csv-parse', 'csv-stringify', 'saxes'],
    why: 'Schemas say what may come in and what goes out, in terms of the core.',
  },
  {
    name: 'useCases',
    files: ['^src/useCases/', '^src/core/', '^src/stores/'],
    packages: [],
    why: 'A use case loads, calls the core and saves; it knows no protocol and no database.',
  },
  {
    name: 'edges',
    files: ['^src/edges/', '^src/core/', '^src/schemas/', '^src/useCases/'],
    notPackages: DATABASE,
    why: 'Edges translate between a protocol and the use cases; they reach no store.',
  },
  {
    name: 'persistence',
    files: ['^src/persistence/', '^src/core/', '^src/stores/'],
    packages: ['@prisma/', 'pg', '@electric-sql/', 'pglite-prisma-adapter'],
    builtIn: true,
    why: 'The only code that knows Prisma, PGlite and PostgreSQL knows nothing else.',
  },
]

const escaped = (text) => text.replaceAll(/[.]/g, '\\.')
/** How dependency-cruiser names a package: by its folder in node_modules, or by its bare name where it is not installed. */
const pathsOf = (name) =>
  name.endsWith('/')
    ? [`node_modules/${name}`, `^${name}`]
    : [`node_modules/(@types/)?${escaped(name)}/`, `^${escaped(name)}(/|$)`]

const layerRules = LAYERS.map(({ name, files, packages, notPackages, builtIn, why }) => ({
  name: `layer-${name}`,
  comment: why,
  severity: 'error',
  from: { path: `^src/${name}/` },
  to: packages
    ? {
        pathNot: [...files, ...packages.flatMap(pathsOf)].join('|'),
        ...(builtIn ? { dependencyTypesNot: ['core'] } : {}),
      }
    : { path: ['^src/', ...notPackages.flatMap(pathsOf)].join('|'), pathNot: files.join('|') },
}))

/** Layers that may know the core's words, but must not do its sums. The two error classes are words that exist at run time. */
const typesOnly = ['stores', 'edges'].map((layer) => ({
  name: `types-only-${layer}`,
  comment: `${layer} may import types from the core, and the error classes of core/fault.ts, nothing that computes.`,
  severity: 'error',
  from: { path: `^src/${layer}/` },
  to: {
    path: '^src/core/',
    dependencyTypesNot: ['type-only'],
    ...(layer === 'edges' ? { pathNot: FAULTS } : {}),
  },
}))

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    ...layerRules,
    ...typesOnly,
    {
      name: 'database-only-in-persistence',
      comment: 'Only src/persistence knows how things are stored.',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/persistence/' },
      to: { path: DATABASE.flatMap(pathsOf).join('|') },
    },
    {
      name: 'nothing-imports-the-root',
      comment:
        'The composition root puts the parts together; a part that imports it can no longer be put elsewhere.',
      severity: 'error',
      from: { path: '^src/', pathNot: COMPOSITION_ROOT },
      to: { path: COMPOSITION_ROOT },
    },
    {
      name: 'no-other-places',
      comment: 'Every source file is in a layer or is named as part of the composition root.',
      severity: 'error',
      from: { path: '^(src|test)/' },
      to: {
        path: '^src/',
        pathNot: [COMPOSITION_ROOT, ...LAYERS.map(({ name }) => `^src/${name}/`)].join('|'),
      },
    },
    {
      name: 'source-stands-alone',
      comment: 'What is shipped imports nothing from test, seed or the tools.',
      severity: 'error',
      from: { path: '^src/' },
      to: { path: '^(test|seed|prisma|dist|\\.config|\\.ci)/' },
    },
    {
      name: 'no-development-packages',
      comment: 'The production image has no development dependencies.',
      severity: 'error',
      from: { path: '^src/' },
      to: { dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown'], dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'no-cycles',
      comment: 'Two files that need each other are one idea, or have a third one hidden in them.',
      severity: 'error',
      from: { path: '^(src|test)/' },
      to: { circular: true },
    },
    {
      name: 'no-missing-files',
      comment: 'An import that leads nowhere.',
      severity: 'error',
      from: { path: '^(src|test)/' },
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules|^src/persistence/generated/' },
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
    },
  },
}
