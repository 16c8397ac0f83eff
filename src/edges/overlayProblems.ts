import { type Problem, problem } from './problemRow.ts'

/** The rows of the table in errors.ts that speak of an organisation's own figures over the shared catalogue. */
export const OVERLAY_PROBLEMS = {
  'unknown-overlay-revision': problem(
    404,
    'Your organisation has no such overlay revision',
    "newest is the newest revision of your organisation's own figures. Leave overlayRevision out to use it, or send 0 to use the shared catalogue alone. Other organisations' figures can't be asked for.",
  ),
  'unknown-overlay-category': problem(
    404,
    'Your organisation has no such category of its own',
    'GET /v1/overlay lists those that it has. What it has not laid over the shared catalogue is at /v1/categories.',
  ),
  'overlay-full': problem(
    409,
    'There are too many categories of your own',
    'An organisation can lay 2,000 categories over the shared catalogue. Remove those that are not needed any more.',
  ),
  'stale-overlay': problem(
    412,
    "Your organisation's figures have been edited meanwhile",
    'lastEdit says by whom, when and why, changes in which fields, current how the category is now; etag is the tag to base the next attempt on. Where current is null, there is none of your own: send If-None-Match: * to lay one.',
  ),
} as const satisfies Record<string, Problem>
