import { readSeed } from '../../src/readSeed.ts'

/** The languages of the quiz that the service is shipped with. */
export const { languages: shippedLanguages } = await readSeed()
