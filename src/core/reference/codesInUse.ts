/** The codes of entries that are not retired, for messages that suggest one. */
export const codesInUse = (
  entries: ReadonlyMap<string, { readonly code: string; readonly retired: boolean }>,
): string[] => [...entries.values()].filter(({ retired }) => !retired).map(({ code }) => code)
