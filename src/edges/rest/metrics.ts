import { collectDefaultMetrics, Counter, Gauge, Histogram, Registry } from 'prom-client'

/** What is counted while the service runs, and read by what watches it. */
export interface Metrics {
  /** The pattern of the route, never an address, which may hold what a caller typed. */
  readonly countRequest: (request: {
    readonly method: string
    readonly route: string
    readonly status: number
    readonly seconds: number
  }) => void
  /** An estimate was made, whose total has this flag. */
  readonly countEstimate: (confidence: string) => void
  /** All of it in the text format of Prometheus, and the media type of that. */
  read(): Promise<{ readonly text: string; readonly type: string }>
}

/** What is asked for when the metrics are read. */
export interface MetricSources {
  readonly catalogueRevision: () => number
  readonly referenceRevision: () => number
  /** Sessions with a database server; missing where it is embedded. */
  readonly databaseSessions?:
    (() => { readonly busy: number; readonly idle: number; readonly waiting: number }) | undefined
}

/** Upper bounds, s: an estimate takes some milliseconds, an import some seconds. */
const SECONDS = [0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 10]

/**
 * Metrics in a registry of their own. No label says who called or with what key, and each takes few values.
 * Behind an interface, since the package has a successor that needs a newer Node.
 */
export function openMetrics(sources: MetricSources): Metrics {
  const registers = [new Registry()]
  collectDefaultMetrics({ register: registers[0]! })
  const requests = new Histogram({
    name: 'standby_http_request_duration_seconds',
    help: 'Requests by route and status, and how long they took to answer',
    labelNames: ['method', 'route', 'status'],
    buckets: SECONDS,
    registers,
  })
  const estimates = new Counter({
    name: 'standby_estimates_total',
    help: 'Estimates by the flag of their total',
    labelNames: ['confidence'],
    registers,
  })
  addGauges(sources, registers)
  return {
    countRequest: ({ seconds, ...labels }) => requests.observe(labels, seconds),
    countEstimate: (confidence) => estimates.inc({ confidence }),
    read: async () => ({ text: await registers[0]!.metrics(), type: registers[0]!.contentType }),
  }
}

function addGauges(sources: MetricSources, registers: Registry[]): void {
  const gauge = (name: string, help: string, read: () => number) =>
    new Gauge({
      name: `standby_${name}`,
      help,
      registers,
      collect() {
        this.set(read())
      },
    })
  gauge(
    'catalogue_revision',
    'Newest catalogue revision that this process has seen',
    sources.catalogueRevision,
  )
  gauge(
    'reference_revision',
    'Newest revision of tariffs and emission factors that this process has seen',
    sources.referenceRevision,
  )
  const { databaseSessions: sessions } = sources
  if (sessions === undefined) return
  gauge('database_sessions_busy', 'Sessions with the database that are in use', () => sessions().busy)
  gauge(
    'database_sessions_idle',
    'Sessions with the database that are open and not in use',
    () => sessions().idle,
  )
  gauge('database_sessions_waiting', 'Requests that wait for a session', () => sessions().waiting)
}
