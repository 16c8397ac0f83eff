/** A text of JSON as what it stands for; what is no JSON stays text, which a schema then refuses. */
export function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch (error) {
    if (error instanceof SyntaxError) return text
    throw error
  }
}
