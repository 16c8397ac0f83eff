/** A device's id: its own, or its place in the list. */
export const deviceId = (device: { readonly id?: string | undefined }, index: number): string =>
  device.id ?? `device-${index + 1}`
