import type { Drawing } from '../quantity/term.ts'
import { METHOD_VERSION } from './methodVersion.ts'

/** The method's version, and where sums were drawn how, so that the same can be had again: 1.0.0+monte-carlo.100000.1 */
export const methodUsed = (drawing: Drawing | null): string =>
  drawing ? `${METHOD_VERSION}+monte-carlo.${drawing.draws}.${drawing.seed}` : METHOD_VERSION
