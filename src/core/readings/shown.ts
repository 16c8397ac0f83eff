/** A figure in a sentence: three digits, as many as such figures are worth. */
export const shown = (value: number): string => String(Number(value.toPrecision(3)))
