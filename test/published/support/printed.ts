/**
 * How far a value is from a figure as its source prints it, in units of the figure's last digit: up to 0.5 is what
 * rounding explains. '587' counts in ones, '0.0711' in ten-thousandths, '1.813e9' in millions.
 */
export function unitsOff(value: number, printed: string): number {
  const [mantissa = '', exponent = '0'] = printed.toLowerCase().split('e')
  const decimals = mantissa.split('.')[1]?.length ?? 0
  const unit = Number(`1e${Number(exponent) - decimals}`)
  return Math.abs(value - Number(printed)) / unit
}

/** Rounding alone, with room for the last bits of the arithmetic. */
export const ROUNDING = 0.5 + 1e-9

/** Relative difference of a value from a reference. */
export const relativeError = (value: number, reference: number): number => Math.abs(value / reference - 1)
