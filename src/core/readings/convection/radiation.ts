/** Stefan-Boltzmann constant, W/(m² K⁴), as the SI of 2019 fixes it. */
const STEFAN_BOLTZMANN = 5.670374419e-8

/**
 * Heat that a grey surface gives off by radiation to surroundings at one temperature, W/m².
 *
 *   q = emissivity sigma (Ts^4 - Ta^4)          temperatures in K
 */
export const radiation = (surfaceK: number, ambientK: number, emissivity: number): number =>
  emissivity * STEFAN_BOLTZMANN * (surfaceK ** 4 - ambientK ** 4)
