/**
 * Version of the estimation method, in every result. It moves when a number that the service gives for the same
 * input would move; DEVELOPERS.md, Changelog, says which, by how much and why.
 */
export const METHOD_VERSION = '1.0.0'
