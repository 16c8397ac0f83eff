import type { SqlConnection } from '../../src/persistence/sqlConnection.ts'
import type { DataModel } from './readDataModel.ts'

/** What PostgreSQL calls the types that schema.prisma uses. A type that is not here must be added when it is first used. */
const TYPES: Readonly<Record<string, string>> = {
  String: 'text',
  Int: 'integer',
  Boolean: 'boolean',
  'DateTime Timestamptz(3)': 'timestamp(3) with time zone',
  'DateTime Date()': 'date',
  'Json Json()': 'json',
  'Json JsonB()': 'jsonb',
  BigInt: 'bigint',
  Float: 'double precision',
  Bytes: 'bytea',
}

/** One line for each column, key, index and reference that schema.prisma speaks of, sorted. */
export function describeModel({ models, indexes }: DataModel): string[] {
  const lines = models.flatMap((model) => {
    const table = tableOf(model)
    const columnNames = new Map(model.fields.map((field) => [field.name, field.dbName ?? field.name]))
    const columns = (names: readonly string[]) => names.map((name) => columnNames.get(name)).join(', ')
    const stored = model.fields.filter(({ kind }) => kind !== 'object')
    const references = model.fields.filter(({ relationFromFields }) => (relationFromFields ?? []).length > 0)
    return [
      ...stored.map((field) => {
        const nullable = field.isRequired ? 'not null' : 'nullable'
        return `${table}: column ${field.dbName ?? field.name} ${typeOf(field)}, ${nullable}${field.hasDefaultValue ? ', default' : ''}`
      }),
      ...indexes
        .filter((index) => index.model === model.name)
        .map(({ type, fields }) => `${table}: ${KINDS[type]} (${columns(fields.map(({ name }) => name))})`),
      ...references.map((field) => {
        const target = models.find(({ name }) => name === field.type)!
        const [from, to] = [columns(field.relationFromFields!), field.relationToFields!.join(', ')]
        const rules = `on delete ${field.relationOnDelete?.toLowerCase()}, on update ${field.relationOnUpdate?.toLowerCase()}`
        return `${table}: (${from}) references ${tableOf(target)} (${to}), ${rules}`
      }),
    ]
  })
  return lines.sort()
}

const KINDS = { id: 'primary key', unique: 'unique index', normal: 'index' }
const tableOf = ({ dbName, name }: DataModel['models'][number]) => dbName ?? name

function typeOf({ name, type, nativeType, isList }: DataModel['models'][number]['fields'][number]): string {
  const written = nativeType === null ? type : `${type} ${nativeType[0]}(${nativeType[1].join(', ')})`
  const known = TYPES[written]
  if (known === undefined) throw new Error(`The type "${written}" of ${name} is not known to this check yet.`)
  return isList ? `${known}[]` : known
}

/** The same lines, of what is really in the database. */
export async function describeDatabase(connection: SqlConnection): Promise<string[]> {
  const lines = await connection.query<{ line: string }>(`
    WITH tables AS (
      SELECT oid, relname FROM pg_class
      WHERE relnamespace = 'public'::regnamespace AND relkind IN ('r', 'p') AND relname <> 'schema_migration'
    )
    SELECT format('%s: column %s %s, %s%s', relname, attname, format_type(atttypid, atttypmod),
      CASE WHEN attnotnull THEN 'not null' ELSE 'nullable' END,
      CASE WHEN atthasdef OR attidentity <> '' THEN ', default' ELSE '' END) AS line
    FROM tables JOIN pg_attribute ON attrelid = tables.oid WHERE attnum > 0 AND NOT attisdropped
    UNION ALL
    SELECT format('%s: %s (%s)', relname,
      CASE WHEN indisprimary THEN 'primary key' WHEN indisunique THEN 'unique index' ELSE 'index' END,
      (SELECT string_agg(pg_get_indexdef(indexrelid, position, true), ', ' ORDER BY position)
       FROM generate_series(1, indnkeyatts) AS position))
    FROM tables JOIN pg_index ON indrelid = tables.oid
    UNION ALL
    SELECT format('%s: (%s) references %s (%s), on delete %s, on update %s', relname,
      ${columnsOf('conrelid', 'conkey')}, confrelid::regclass, ${columnsOf('confrelid', 'confkey')},
      ${ruleOf('confdeltype')}, ${ruleOf('confupdtype')})
    FROM tables JOIN pg_constraint ON conrelid = tables.oid AND contype = 'f'`)
  return lines.map(({ line }) => line).sort()
}

const columnsOf = (table: string, numbers: string) => `(
  SELECT string_agg(attname, ', ' ORDER BY place) FROM unnest(${numbers}) WITH ORDINALITY AS named (number, place)
  JOIN pg_attribute ON attrelid = ${table} AND attnum = named.number)`

const ruleOf = (column: string) => `CASE ${column} WHEN 'r' THEN 'restrict' WHEN 'c' THEN 'cascade'
  WHEN 'n' THEN 'setnull' WHEN 'd' THEN 'setdefault' ELSE 'noaction' END`
