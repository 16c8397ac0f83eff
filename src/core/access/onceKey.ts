/** How long the result of a request with an Idempotency-Key is kept, h: a phone may be out of reach for a day. */
export const RESULT_KEPT_HOURS = 24

/** What a key may look like: 1 to 200 visible characters of ASCII. */
export const ONCE_KEY = /^[\x21-\x7e]{1,200}$/
