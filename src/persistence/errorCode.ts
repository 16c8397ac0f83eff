/** The code that the system gave an error, such as ENOENT; empty where it has none. */
export function errorCode(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : ''
}
