/** What answers say of themselves that are an organisation's alone. */
export const OWN_TAG = {
  ETag: {
    type: 'string',
    description:
      'Tag of this state of your own figures; send it as If-None-Match, or, of one category, as If-Match',
  },
} as const
