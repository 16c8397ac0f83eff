/**
 * A distribution as probabilities on the multiples of a step: value (start + i) x step has probability masses[i], for
 * i = 0 .. length - 1.
 *
 * Every probability between two lattice points is split between them in proportion to nearness, so the mean is kept
 * exactly, and the variance grows by `smear` x step^2 (1/6 for a density that is smooth over a step). Sums are
 * convolutions; smears add.
 *
 * A lattice is working memory: it is filled, read and filled again, because making an array for each of the dozens in
 * one household would cost more than the arithmetic. `clear` wipes all that will be read, so nothing of an earlier use
 * is left. After the last point stand PADDING zeros, which lets convolve.ts work on four points at a time.
 */
export class Lattice {
  start = 0
  length = 0
  smear = 0
  masses: Float64Array = new Float64Array(128)

  clear(start: number, length: number): void {
    const room = length + PADDING
    if (this.masses.length < room) this.masses = new Float64Array(2 * room)
    else this.masses.fill(0, 0, room)
    this.start = start
    this.length = length
    this.smear = 0
  }
}

export const PADDING = 3
