/**
 * Every limit on a GraphQL request, and why it has its size. They are no secret: messages name the limit that
 * was passed, so that a caller can correct the query.
 */
export const GRAPHQL_LIMITS = {
  /**
   * Lexical tokens in the query text. Every field of an estimate is about 210 tokens, the usual introspection query
   * 190, and 500 devices written into the text instead of a variable 2,500 by category alone.
   */
  tokens: 5_000,
  /** Levels of fields. The deepest useful path, categories/edges/node/modes/draws/provenance/kind, has 7. */
  depth: 10,
  /** Renamed fields in one document. Thirty variants of a household side by side are more than a screen shows. */
  aliases: 30,
  /** Directives in one document. The schema has @include and @skip only; one for each field of one object is enough. */
  directives: 50,
  /**
   * Cost of one operation, in fields to resolve at most plus the sums behind an estimate. Every field of an estimate
   * of 500 devices, the largest household that is accepted, costs about 230,000; so a request gets as much work out
   * of the service here as it could over REST, and not that much again under a second alias.
   */
  cost: 240_000,
  /** Categories on one page when nothing is asked for, and at most; the same as REST's `limit`. */
  defaultPageSize: 50,
  pageSize: 200,
  /** Ids in one `nodes` query: one page. */
  nodeIds: 200,
} as const

/** Entries that a list without a page argument counts as; Pothos' own default, named since `estimate` builds on it. */
export const LIST_COST = 10

/** Entries that shorter lists count as: the most that there can be of modes, and what is usual of the others. */
export const EXPECTED_LENGTH = {
  modes: 5,
  draws: 4,
  warnings: 5,
  expectedWidths: 3,
  readingPlaces: 5,
  cautions: 10,
  groups: 11,
  questions: 20,
  hoursChoices: 6,
  quizReadings: 4,
} as const

/**
 * Cost of the sums behind one device of an estimate, in fields: such a sum was measured to take some hundred times
 * as long as resolving a field (about 0.3 to 1.3 ms, growing with the household).
 */
export const COST_OF_ONE_DEVICE = 250

/** Of finding the next readings' expected widths, for each device: four more totals, some third of the sums above. */
export const COST_OF_WIDTHS = 100

/**
 * Draws of one mode of a device that take as long as resolving one field: measured at 0.2 to 1.2 microseconds each, with
 * all the sums that they stand in. Draws take the place of the sums above.
 */
export const DRAWS_PER_FIELD = 4

/**
 * Samples of a series that take as long as resolving one field: to be read, checked and judged (a series of 90,000 was
 * measured to take 25 to 70 ms).
 */
export const SAMPLES_PER_FIELD = 4

/** Lists of a few plain values or of the parts of one tariff, which take no longer than one field. */
export const SHORT_LIST = { field: 1, multiplier: 1 } as const
