// Published values of the cooling of a wall: roots of the series, worked examples, and the same equation in soil mechanics.
import { biotNumber } from "#physics/cooling/biotNumber.ts";
import { coolingTime } from "#physics/cooling/coolingTime.ts";
import { fourierNumber } from "#physics/cooling/fourierNumber.ts";
import { slabMode } from "#physics/cooling/slabMode.ts";
import { slabRoot } from "#physics/cooling/slabRoot.ts";
import type { WallCooling } from "#physics/cooling/wallCooling.ts";
import { profileAt, profileCourse } from "#physics/cooling/wallProfile.ts";
import { wallTemperature } from "#physics/cooling/wallTemperature.ts";
import { rootBetween } from "#physics/numeric/rootBetween.ts";
import { valuesOf, type PublishedValue } from "../publishedValue.ts";

/** Thickness and diffusivity 1, from 1 to 0: time is the Fourier number of a wall that is cooled at one face. */
const unitWall: WallCooling = {
  wall: 1,
  diffusivity: 1,
  conductivity: 1,
  meltTemperature: 1,
  moldTemperature: 0,
  moldContact: Infinity,
};
const bothFaces: WallCooling = { ...unitWall, insideAir: { temperature: 0, transfer: Infinity } };

const incropera = "Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, 6th ed., 2007";

const table = valuesOf("cooling", "M", `${incropera}, table 5.1`);
const rootAt = (biot: number): number => slabMode(0, { inside: 0, outside: biot }).root;
const constantAt = (biot: number): number => {
  const { level, cosine } = slabMode(0, { inside: 0, outside: biot });
  return level * cosine;
};
const ofTable = (biot: number, root: string, constant: string): readonly PublishedValue[] => [
  table(`first root of a plane wall, Bi ${biot}`, root, "1", () => rootAt(biot)),
  table(`constant C₁ of a plane wall, Bi ${biot}`, constant, "1", () => constantAt(biot)),
];

const appendix = valuesOf(
  "cooling",
  "M",
  "Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, appendix IV",
);
const laterRoots = ["3.4256", "6.4373", "9.5293", "12.6453", "15.7713"].map((printed, index) =>
  appendix(`root ${index + 2} of ζ tan ζ = 1`, printed, "1", () => slabRoot(index + 1, { inside: 0, outside: 1 })),
);

/** The wall of a pipe that hot oil heats from inside: a wall with one insulated face. */
const pipe: WallCooling = {
  wall: 0.04,
  diffusivity: 18.8e-6,
  conductivity: 63.9,
  meltTemperature: -20,
  moldTemperature: 60,
  moldContact: 500,
};
const example = valuesOf("cooling", "R", `${incropera}, example 5.4, in a collection of its examples`);
const interpolated = { share: 0.002, because: "the example interpolates in a table" };
const roundedRoot = { share: 0.007, because: "the example takes the root as 0.531" };
/** J for each meter of a pipe of 1 m diameter. */
const storedHeat = (): number => Math.PI * 0.04 * (7832 * 434) * (-20 - wallTemperature(pipe, "mean", 480));
const pipeValues = [
  example("Biot number of the pipe wall", "0.31", "1", () => biotNumber(500, 0.04, 63.9)),
  example("Fourier number after 8 min", "5.64", "1", () => fourierNumber(18.8e-6, 480, 0.04)),
  example(
    "first root at the Biot number of the pipe",
    "0.531",
    "1",
    () => rootAt(biotNumber(500, 0.04, 63.9)),
    interpolated,
  ),
  example("constant C₁ at the Biot number of the pipe", "1.047", "1", () => constantAt(biotNumber(500, 0.04, 63.9))),
  example("insulated face after 8 min", "42.92", "°C", () => wallTemperature(pipe, "inside face", 480), {
    share: 0.003,
    because: "the example takes the root as 0.531",
  }),
  example(
    "heat flux into the wall at 8 min",
    "-7362.49",
    "W/m²",
    () => 500 * (wallTemperature(pipe, "mold face", 480) - 60),
    roundedRoot,
  ),
  example("heat in a meter of pipe after 8 min", "-2.72e7", "J/m", storedHeat, roundedRoot),
];

/** Soil of 20 °C whose surface falls to −15 °C: a wall so thick that its other face does not matter. */
const soil: WallCooling = {
  wall: 5,
  diffusivity: 0.52 / (2050 * 1840),
  conductivity: 0.52,
  meltTemperature: 20,
  moldTemperature: -15,
  moldContact: Infinity,
};
function frozenDepth(): number {
  const profile = profileCourse(soil)(60 * 86_400);
  return 5 * (1 - rootBetween((place) => -profileAt(profile, place), 0, 1));
}

/** Fourier number at which a share of the heat has left a wall that is cooled at one face. */
const lost = (share: number): number => coolingTime(unitWall, "mean", 1 - share);
const drained = (flag: "R" | "M") =>
  valuesOf(
    "cooling",
    flag,
    flag === "R"
      ? "Terzaghi's theory of consolidation, solved question of the examination SSC JE, civil engineering"
      : "Das, Principles of Geotechnical Engineering, 7th ed., 2010, time factors of Terzaghi's theory",
  );
const timeFactor = (percent: number, printed: string, flag: "R" | "M"): PublishedValue =>
  drained(flag)(`time factor of ${percent} % consolidation, as heat lost at one face`, printed, "1", () =>
    lost(percent / 100),
  );

export const cooling: readonly PublishedValue[] = [
  ...ofTable(0.1, "0.3111", "1.0161"),
  ...ofTable(0.5, "0.6533", "1.0701"),
  ...ofTable(1, "0.8603", "1.1191"),
  ...ofTable(4, "1.2646", "1.2287"),
  ...ofTable(10, "1.4289", "1.2620"),
  ...ofTable(100, "1.5552", "1.2731"),
  ...laterRoots,
  ...pipeValues,
  valuesOf("cooling", "M", `${incropera}, example 5.6`)(
    "depth of 0 °C in soil after 60 days",
    "0.68",
    "m",
    frozenDepth,
  ),
  timeFactor(20, "0.031", "M"),
  timeFactor(40, "0.126", "M"),
  timeFactor(50, "0.197", "R"),
  timeFactor(70, "0.403", "M"),
  timeFactor(90, "0.848", "R"),
  timeFactor(95, "1.129", "M"),
  valuesOf("cooling", "M", "Crank, The Mathematics of Diffusion, 2nd ed., 1975, half-time of a plane sheet")(
    "Fourier number at which a wall cooled at both faces has lost half of its heat",
    "0.049",
    "1",
    () => coolingTime(bothFaces, "mean", 0.5),
  ),
];
