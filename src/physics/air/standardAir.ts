// Properties of dry air, and the reference state of flow and consumption of compressed air.

/** J/(kg K): ISO 2533:1975, Standard Atmosphere (from memory). */
export const GAS_CONSTANT = 287.05;
/** c_p / c_v of a diatomic gas: ISO 2533:1975, Standard Atmosphere (from memory). */
export const HEAT_RATIO = 1.4;
/** Pa: ISO 2533:1975, Standard Atmosphere (from memory). */
export const ATMOSPHERE = 101_325;
/** kg/m³ at 100 kPa and 20 °C: ISO 6358-1:2013, reference atmosphere (from memory). */
export const REFERENCE_DENSITY = 1.185;
/** K: ISO 6358-1:2013, reference atmosphere (from memory). */
export const REFERENCE_TEMPERATURE = 293.15;
/** Pa: ISO 6358-1:2013, reference atmosphere (from memory). */
export const REFERENCE_PRESSURE = 100_000;
/** K at 0 °C, exact by convention. */
export const ICE_POINT = 273.15;
