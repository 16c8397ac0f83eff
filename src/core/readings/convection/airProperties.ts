/** What natural convection needs to know of air, all at one temperature and one standard atmosphere. */
export interface AirProperties {
  /** Thermal conductivity, W/(m K). */
  readonly conductivity: number
  /** m²/s */
  readonly kinematicViscosity: number
  /** m²/s */
  readonly thermalDiffusivity: number
  readonly prandtl: number
  /** Volumetric expansion, 1/K. */
  readonly expansion: number
}

const PRESSURE_PA = 101_325
/** J/(kg K): 8314.32/28.9644. */
const GAS_CONSTANT = 8314.32 / 28.9644
/** J/(kg K), of a gas with a ratio of specific heats of 1.4. */
const SPECIFIC_HEAT = 3.5 * GAS_CONSTANT

/**
 * Properties of dry air at 101,325 Pa.
 *
 *   mu = 1.458e-6 T^1.5 / (T + 110.4)                          Pa s
 *   k  = 2.64638e-3 T^1.5 / (T + 245.4 10^(-12/T))             W/(m K)
 *   rho = p / (R T),  nu = mu/rho,  Pr = mu cp/k,  alpha = nu/Pr,  beta = 1/T (ideal gas)
 *
 * Within 3 % of the tables of heat-transfer textbooks from 250 K to 400 K, which differ among themselves as much.
 * Source: U.S. Standard Atmosphere, 1976, equations 51 and 53, constants R*, M0 and gamma (V2: read in public
 * transcriptions of the equations). Altitude and humidity are left out: far below the +-30 % of the indication.
 * @param kelvin film temperature, K
 */
export function airProperties(kelvin: number): AirProperties {
  const viscosity = (1.458e-6 * kelvin ** 1.5) / (kelvin + 110.4)
  const conductivity = (2.64638e-3 * kelvin ** 1.5) / (kelvin + 245.4 * 10 ** (-12 / kelvin))
  const kinematicViscosity = (viscosity * GAS_CONSTANT * kelvin) / PRESSURE_PA
  const prandtl = (viscosity * SPECIFIC_HEAT) / conductivity
  return {
    conductivity,
    kinematicViscosity,
    thermalDiffusivity: kinematicViscosity / prandtl,
    prandtl,
    expansion: 1 / kelvin,
  }
}
