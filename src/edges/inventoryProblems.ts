import { type Problem, problem } from './problemRow.ts'

/** The rows of the table in errors.ts that speak of inventories, of estimates that are kept, and of requests sent twice. */
export const INVENTORY_PROBLEMS = {
  'idempotency-key-malformed': problem(
    400,
    'The Idempotency-Key cannot be used',
    'Send 1 to 200 visible ASCII characters, new for each request, such as a UUID.',
  ),
  'unknown-inventory': problem(
    404,
    'There is no such inventory',
    'GET /v1/inventories lists those of your organisation.',
  ),
  'unknown-estimate': problem(
    404,
    'There is no such stored estimate',
    'GET /v1/inventories/{id}/estimates lists those of the inventory.',
  ),
  'idempotency-key-busy': problem(
    409,
    'The same request is under way',
    'A request with this Idempotency-Key has not been answered yet. Wait for its answer, or send it again in a moment.',
  ),
  'inventory-exists': problem(
    409,
    'There is an inventory with this reference already',
    'id names it. Change that one, or choose another reference.',
  ),
  'intake-line-changed': problem(
    409,
    'This line of the batch is stored already, and was another one then',
    'inventoryId names what was stored. Give a batch with other lines another name; to change a household, PATCH its inventory.',
  ),
  'stale-inventory': problem(
    412,
    'The inventory has been changed meanwhile',
    'version is its present one. Read it again, and make the change on top of what is there now.',
  ),
  'idempotency-key-reused': problem(
    422,
    'The Idempotency-Key belongs to another request',
    'The key came with another address or body within the last 24 hours. Use a new key for a new request.',
  ),
} as const satisfies Record<string, Problem>
