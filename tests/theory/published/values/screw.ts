// Published values of the output of a screw, and of what follows from a stirred hold-up.
import { backFlow } from "#physics/screw/backFlow.ts";
import { dragFlow } from "#physics/screw/dragFlow.ts";
import { oldShare, purgeMass } from "#physics/screw/colorChange.ts";
import { screwOutput } from "#physics/screw/screwOutput.ts";
import { rootBetween } from "#physics/numeric/rootBetween.ts";
import { valuesOf, type PublishedValue } from "../publishedValue.ts";

const groover = (example: string) =>
  valuesOf("screw", "M", `Groover, Fundamentals of Modern Manufacturing, 4th ed., 2010, example ${example}`);
const flows = groover("13.1");
const operation = groover("13.2");
const channel = { diameter: 0.075, depth: 0.006, helixAngle: 20, length: 1.9 };
const output = (pressure: number): number => screwOutput(channel, { speed: 1, pressure, viscosity: 100 });
/** Flow of a round die of 6.5 mm diameter and 20 mm length at a pressure. */
const dieFlow = (pressure: number): number => (pressure * Math.PI * 0.0065 ** 4) / (128 * 100 * 0.02);
const operatingPressure = (): number => rootBetween((pressure) => dieFlow(pressure) - output(pressure), 0, 2e7);

const screw: readonly PublishedValue[] = [
  flows("drag flow", "53.53e-6", "m³/s", () => dragFlow(channel, 1)),
  flows("back flow at 7 MPa", "18.28e-6", "m³/s", () => backFlow(channel, 7e6, 100)),
  flows("output at 7 MPa", "35.25e-6", "m³/s", () => output(7e6)),
  operation("pressure without output", "20.50e6", "Pa", () =>
    rootBetween((pressure) => backFlow(channel, pressure, 100) - dragFlow(channel, 1), 0, 5e7),
  ),
  operation("pressure at the operating point", "2.184e6", "Pa", operatingPressure, {
    share: 5e-4,
    because: "the example rounds the shape factor of the die to 21.9e-12",
  }),
];

const ventilation = valuesOf(
  "purge and residence",
  "R",
  "Centers for Disease Control, Guidelines for Preventing the Transmission of Tuberculosis, MMWR 43 (RR-13), 1994, table S3-1",
);
/** Minutes at one change of the content an hour until this share of a stirred volume is left. */
const minutesTo = (left: number): number =>
  60 * rootBetween((mass) => left - oldShare({ screw: 2, manifold: 1, screwShare: 0 }, mass), 0, 20);

const chiSquared = valuesOf(
  "purge and residence",
  "M",
  "NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4, chi-squared with 4 degrees of freedom",
);
/** The residue of two equal stirred tanks is a gamma tail of shape 2. */
const twoTanks = (residue: number, printed: string): PublishedValue =>
  chiSquared(
    `twice the melt that purges two equal tanks to ${100 * residue} %, in hold-ups`,
    printed,
    "1",
    () => 2 * purgeMass({ screw: 1, manifold: 1, manifolds: 1, residue }),
  );

const purge: readonly PublishedValue[] = [
  ventilation("one air change an hour, 99 % removed", "276", "min", () => minutesTo(0.01)),
  ventilation("one air change an hour, 99.9 % removed", "414", "min", () => minutesTo(0.001)),
  twoTanks(0.1, "7.779"),
  twoTanks(0.05, "9.488"),
  twoTanks(0.01, "13.277"),
  twoTanks(0.001, "18.467"),
];

export const screwValues: readonly PublishedValue[] = [...screw, ...purge];
