import { type Problem, problem } from './problemRow.ts'

const REALM = 'Bearer realm="standby-draw-estimation"'

/** The rows of the table in errors.ts that speak of keys, scopes, organisations and the audit trail. */
export const ACCESS_PROBLEMS = {
  'key-in-query': problem(
    400,
    'A key does not belong in an address',
    'Addresses are kept in histories and logs. Send the key in Authorization: Bearer …, and replace this one, since others may have seen it.',
  ),
  'key-required': problem(
    401,
    'A key is required',
    'Send a key in Authorization: Bearer …; an admin of your organisation issues keys. Estimates need one where the operator gives none to callers without a key (ANONYMOUS_ESTIMATES is false).',
    { 'www-authenticate': REALM },
  ),
  'key-unknown': problem(
    401,
    'The key is not valid',
    'The key that was sent is not one, or it has expired or been revoked; which of them is not told. Send a valid key in Authorization: Bearer …, or, where none is needed, leave the header out.',
    { 'www-authenticate': `${REALM}, error="invalid_token"` },
  ),
  'scope-missing': problem(
    403,
    'The key may not do this',
    'scope names what the key would need. An admin of your organisation issues keys with other scopes.',
  ),
  'operator-only': problem(
    403,
    'Only the operator may do this',
    'This is for admin keys of the organisation that runs the service.',
  ),
  'publishable-key': problem(
    403,
    'A publishable key is not for this',
    'A publishable key is good for POST /v1/estimates and the quiz alone, whatever its scopes. Use a secret key, and never in a page.',
  ),
  'foreign-origin': problem(
    403,
    'The key is not for this origin',
    'A publishable key is good only for pages of the origins that it was issued for; the browser names them in the header Origin.',
  ),
  'unknown-key': problem(
    404,
    'There is no such key',
    'GET /v1/api-keys lists the keys that you may manage, and their ids.',
  ),
  'unknown-audit-event': problem(
    404,
    'There is no such audit event',
    'GET /v1/audit-events lists the events that you may read.',
  ),
  'organisation-exists': problem(
    409,
    'There is such an organisation already',
    'Codes of organisations are unique. Choose another one.',
  ),
  'key-ended': problem(
    409,
    'The key is no longer valid',
    'A key that has expired or been revoked stays so, and has no successor. Issue a new key.',
  ),
  'key-rotated': problem(
    409,
    'The key has a successor already',
    'successor is its id. Rotate that one; or, if it was lost, revoke it and issue a new key.',
  ),
  'bootstrap-key': problem(
    409,
    "This key is the operator's setting",
    'The key of BOOTSTRAP_ADMIN_KEY is valid while it is set there. Change or remove the setting, and start the service again.',
  ),
  'quota-exceeded': problem(
    429,
    'Too many requests',
    'Wait the seconds that Retry-After names. RateLimit says how many requests are left (r) and when it is so many as RateLimit-Policy says again (t, in seconds). Send many households at once to /v1/intake-batches; with a key of your own you may ask more often.',
  ),
  'too-many-bad-keys': problem(
    429,
    'Too many keys that are not valid',
    'Keys from this address are not looked at until the seconds that Retry-After names have passed. A caller without a key is not concerned.',
  ),
} as const satisfies Record<string, Problem>
