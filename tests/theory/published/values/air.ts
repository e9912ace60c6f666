// Published values of the flow, the compression and the force of air.
import { airMassFlow, type AirPath } from "#physics/air/airMassFlow.ts";
import { clampForce } from "#physics/air/clampForce.ts";
import { compressionWork } from "#physics/air/compressionWork.ts";
import { exhaustTime } from "#physics/air/exhaustTime.ts";
import { freeAir } from "#physics/air/freeAir.ts";
import { ATMOSPHERE, REFERENCE_DENSITY, REFERENCE_TEMPERATURE } from "#physics/air/standardAir.ts";
import { valuesOf, type PublishedValue } from "../publishedValue.ts";

const PSI = 6894.757;
const INCH = 0.0254;
const FOOT = 0.3048;
const FOOT_POUND = 1.355818;
const POUND_FORCE = 4.448222;
const POUND = 0.45359237;
const celsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

/** A nozzle without losses, κ = 1.4: choked below 0.528; C ρ₀ √T₀ = A √(κ/R) (2/(κ + 1))³. */
function nozzle(area: number, gasConstant = 287.05): AirPath {
  const choked = (area * Math.sqrt(1.4 / gasConstant)) / 1.2 ** 3;
  return { conductance: choked / (REFERENCE_DENSITY * Math.sqrt(REFERENCE_TEMPERATURE)), criticalRatio: 0.528 };
}
const round = (diameter: number): number => (Math.PI / 4) * diameter ** 2;

const white = valuesOf(
  "air flow",
  "R",
  "White, Fluid Mechanics, problem of an air tank of 1.5 m³, a published solution",
);
const tankThroat = nozzle(0.75e-4);
const emptying = (to: number): number =>
  exhaustTime(tankThroat, { volume: 1.5, from: 8e5, to, back: ATMOSPHERE, temperature: 20 }, "isothermal");
const roundGas = { share: 0.003, because: "the solution takes R 287 J/(kg K) and rounded temperatures" };

const orifices = valuesOf(
  "air flow",
  "R",
  "Discharge of air through an orifice, table after Moss, American Machinist, 1906",
);
/** ft³/min of free air of 14.7 psi and 70 °F through a round opening, inches and psi gauge. */
function discharge(diameter: number, gauge: number): number {
  const [ahead, behind] = [(gauge + 14.7) * PSI, 14.7 * PSI];
  const flow = airMassFlow(nozzle(round(diameter * INCH)), { ahead, behind, temperature: celsius(70) });
  return (60 * flow) / (0.07494 * POUND);
}
const moss = { share: 0.006, because: "Moss's formula has 0.5303 in place of 0.532" };
const ellipse = { share: 0.02, because: "an ellipse in place of the adiabatic formula" };
const orifice = (
  diameter: string,
  gauge: number,
  printed: string,
  within: PublishedValue["within"],
): PublishedValue => {
  const [numerator = 1, denominator = 1] = diameter.split("/").map(Number);
  return orifices(
    `free air through ${diameter} in at ${gauge} psi`,
    printed,
    "ft³/min",
    () => discharge(numerator / denominator, gauge),
    within,
  );
};

const airFlow: readonly PublishedValue[] = [
  white(
    "mass flow from 800 kPa through 0.75 cm²",
    "0.141",
    "kg/s",
    () => airMassFlow(tankThroat, { ahead: 8e5, behind: ATMOSPHERE, temperature: 20 }),
    { share: 0.006, because: "the solution cuts off the last digit" },
  ),
  white("time from 800 to 500 kPa", "47.343", "s", () => emptying(5e5), roundGas),
  white("time until the flow is no longer choked", "143.745", "s", () => emptying(ATMOSPHERE / 0.528), roundGas),
  valuesOf(
    "air flow",
    "R",
    "Balmer, Modern Engineering Thermodynamics, 2011, example 16.8, in a collection of its examples",
  )("time until the valve of a tire is no longer choked, 1 ft³ from 50 psi absolute", "18.7", "s", () => {
    const tire = { volume: FOOT ** 3, from: 50 * PSI, to: (14.7 / 0.528) * PSI, back: 14.7 * PSI };
    return exhaustTime(nozzle(round(0.0938 * INCH)), { ...tire, temperature: celsius(70) }, "isothermal");
  }),
  valuesOf(
    "air flow",
    "R",
    "Fox, Pritchard and McDonald, Introduction to Fluid Mechanics, 8th ed., 2011, solution of problem 13.31",
  )(
    "flow of nitrogen from 150 to 100 kPa, not choked, through 30 cm² at 450 K",
    "0.807",
    "kg/s",
    () => airMassFlow(nozzle(0.003, 296.8), { ahead: 1.5e5, behind: 1e5, temperature: 450 - 273.15 }),
    { share: 0.003, because: "an ellipse in place of the adiabatic formula" },
  ),
  orifice("1/16", 100, "6.49", moss),
  orifice("1/4", 100, "104", moss),
  orifice("1/2", 125, "506", moss),
  orifice("1/4", 2, "10.1", ellipse),
  orifice("1/4", 5, "15.9", ellipse),
  orifice("1/4", 12, "24.3", ellipse),
];

/** Work for a ratio of absolute pressures, J/kg. */
const workOf = (ratio: number, intake: number): number => compressionWork((ratio - 1) * ATMOSPHERE, intake);
/** Work for a volume that is taken in at a pressure, J. */
const workOfVolume = (ratio: number, pressure: number, volume: number, intake: number): number =>
  ((pressure * volume) / (287.05 * (intake + 273.15))) * workOf(ratio, intake);
const coulson = valuesOf(
  "compressed air",
  "R",
  "Coulson and Richardson, Chemical Engineering, vol. 1, chapter 8, in a collection of its examples",
);
const machinery = valuesOf(
  "compressed air",
  "R",
  "Machinery's Handbook, 31st ed., work required in compression of air",
);
const perCubicFoot = (gauge: number, printed: string): PublishedValue =>
  machinery(
    `adiabatic work for 1 ft³ of free air to ${gauge} psi`,
    printed,
    "ft lbf",
    () => workOfVolume((gauge + 14.7) / 14.7, 14.7 * PSI, FOOT ** 3, 15.6) / FOOT_POUND,
    { share: 0.015, because: "the table has another ratio of specific heats" },
  );
const atmospheres = (gauge: number, printed: string): PublishedValue =>
  machinery(
    `free air at ${gauge} psi in atmospheres`,
    printed,
    "1",
    () => freeAir(1, gauge * PSI).total / freeAir(1, 0).total,
  );

const compressed: readonly PublishedValue[] = [
  valuesOf("compressed air", "R", "Gujarat Technological University, examination 3110006, summer 2019, question 3c")(
    "power for 0.3 m³/min from 1.013 bar and 15 °C to 7 bar absolute",
    "1.306",
    "kW",
    () => workOfVolume(7 / 1.013, 1.013e5, 0.3 / 60, 15) / 1000,
    { share: 0.001, because: "rounded intermediate results" },
  ),
  valuesOf("compressed air", "M", "Çengel and Boles, Thermodynamics, 5th ed., 2006, example 7-13")(
    "isentropic work from 100 to 900 kPa and 300 K",
    "263.2",
    "kJ/kg",
    () => workOf(9, 300 - 273.15) / 1000,
    { share: 5e-4, because: "R 0.287 kJ/(kg K) there" },
  ),
  coulson(
    "power for 0.1 m³/s at 273 K, taken in at 289 K, from 101.3 to 380 kPa",
    "17.2",
    "kW",
    () => workOfVolume(380 / 101.3, 101.3e3, (0.1 * 289) / 273, 15.85) / 1000,
  ),
  coulson(
    "efficiency of an air lift of 10 kg/s over 40 m with 0.1 m³/s of air at 800 kPa",
    "13.8",
    "%",
    () => (100 * 10 * 40 * 9.81) / workOfVolume(800 / 101.3, 101.3e3, 0.1, 20),
  ),
  perCubicFoot(50, "3942.3"),
  perCubicFoot(80, "5259.7"),
  perCubicFoot(100, "5981.2"),
  atmospheres(50, "4.40"),
  atmospheres(100, "7.80"),
];

const noPinch = { cavities: 1, pinchLength: 0, pinchLoad: 0, margin: 1 };
const clamp: readonly PublishedValue[] = [
  valuesOf(
    "clamp",
    "M",
    "Kalpakjian and Schmid, Manufacturing Engineering and Technology, 4th ed., 2001, example of injection molding",
  )(
    "force on a gear of 4.5 in diameter at 15,000 psi",
    "238500",
    "lbf",
    () => clampForce({ ...noPinch, projectedArea: round(4.5 * INCH), blowPressure: 15_000 * PSI }) / POUND_FORCE,
    { share: 5e-4, because: "the example rounds the area to 15.9 in²" },
  ),
];

export const air: readonly PublishedValue[] = [...airFlow, ...compressed, ...clamp];
