import type { RestContext } from './restContext.ts'
import type { RestApp, SubmittedTypeProvider } from './submitted.ts'

export const MERGE_PATCH = 'application/merge-patch+json'

type AddRoute = (app: RestApp, context: RestContext) => void

/** Adds a route in a scope of its own, where bodies are read as merge patches (RFC 7396) and as nothing else. */
export const readingMergePatches =
  (addRoute: AddRoute): AddRoute =>
  (app, context) =>
    void app.register(async (scope) => {
      scope.removeAllContentTypeParsers()
      const parseJson = scope.getDefaultJsonParser('error', 'error')
      scope.addContentTypeParser(MERGE_PATCH, { parseAs: 'string' }, parseJson)
      addRoute(scope.withTypeProvider<SubmittedTypeProvider>(), context)
    })
