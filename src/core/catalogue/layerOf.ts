import type { Catalogue } from './catalogue.ts'
import type { Layer } from './overlay.ts'

/** The layer that a category of a catalogue is from, by its code. */
export const layerOf = ({ overlay }: Catalogue, code: string): Layer =>
  overlay?.categories.has(code) ? 'organisation' : 'shared'
