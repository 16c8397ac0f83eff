/** HH:MM as quarters of an hour since midnight, 0 to 96. */
export const quarterOfDay = (clock: string): number =>
  Number(clock.slice(0, 2)) * 4 + Number(clock.slice(3)) / 15
