/** A row of the table in errors.ts. */
export interface Problem {
  readonly status: number
  readonly title: string
  /** What a caller should know and do; shown at /problems/{code}. */
  readonly explanation: string
  readonly headers?: Readonly<Record<string, string>>
}
export const problem = (
  status: number,
  title: string,
  explanation: string,
  headers?: Problem['headers'],
): Problem => ({
  status,
  title,
  explanation,
  ...(headers && { headers }),
})
