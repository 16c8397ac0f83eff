/** One session of the database, as little of it as the migrations need; PGlite and pg both can give it. */
export interface SqlConnection {
  /** Runs one or many statements without parameters, such as a whole migration file. */
  run(sql: string): Promise<void>
  /** Runs one statement and gives its rows. */
  query<Row>(sql: string, parameters?: readonly unknown[]): Promise<readonly Row[]>
}

/** Runs the work in one transaction; whatever it throws undoes all of it. */
export async function inTransaction<T>(connection: SqlConnection, work: () => Promise<T>): Promise<T> {
  await connection.run('BEGIN')
  try {
    const result = await work()
    await connection.run('COMMIT')
    return result
  } catch (error) {
    await connection.run('ROLLBACK').catch((second: unknown) => {
      throw new Error(`${String(error)}; and it could not be undone: ${String(second)}`, { cause: error })
    })
    throw error
  }
}
