import { type Problem, problem } from './problemRow.ts'

/** The rows of the table in errors.ts that speak of proposals from readings. */
export const PROPOSAL_PROBLEMS = {
  'unknown-proposal': problem(
    404,
    'There is no such proposal',
    'GET /v1/catalogue/proposals lists those that there are. One comes up once eight devices in eight households were read.',
  ),
  'proposal-not-open': problem(
    409,
    'The proposal was answered already',
    'openAgainAt is the number of readings with which it is open again. Until then it can still be accepted, but not rejected once more.',
  ),
  'stale-proposal': problem(
    412,
    'The proposal is another one by now',
    'Readings have come or gone, or the category was edited. current is how the proposal is now, etag the tag to base the next answer on.',
  ),
} as const satisfies Record<string, Problem>
