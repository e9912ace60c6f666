// Published values of random numbers, distributions, output analysis, max-plus algebra, indicators and units.
import seedrandom from "seedrandom";
import alea from "seedrandom/lib/alea.js";
import { kpiSpecs, type KpiInput } from "#analysis/indicators/kpi.ts";
import { timeElements } from "#analysis/indicators/timeElements.ts";
import { maxPlus } from "#analysis/ideal/maxPlus.ts";
import { meanInterval, tFactor } from "#analysis/statistics/interval.ts";
import { requiredReplications } from "#analysis/statistics/requiredReplications.ts";
import { singleRunRange } from "#analysis/statistics/singleRunRange.ts";
import { gammaQuantile } from "#engine/distributions/gammaQuantile.ts";
import { distributionMean, distributionQuantile } from "#engine/distributions/moments.ts";
import type { Dimension } from "#foundation/dimension.ts";
import { inSi } from "#foundation/quantity.ts";
import { unitSpelled } from "#foundation/unit.ts";
import { alternating, lew, lottery, mavro } from "./nistUnivariate.ts";
import { valuesOf, type PublishedValue } from "../publishedValue.ts";

const generator = valuesOf("random numbers", "R", "seedrandom 3.0.5, README, seed 'hello.'");
const hello = (place: number): number => {
  const next = seedrandom("hello.");
  for (let i = 1; i < place; i++) next();
  return next();
};
const random: readonly PublishedValue[] = [
  generator("first number of the default generator", "0.9282578795792454", "1", () => hello(1)),
  generator("second number of the default generator", "0.3752569768646784", "1", () => hello(2)),
  generator("first number of alea", "0.4783254903741181", "1", () => alea("hello.")()),
];

const handbook = (section: string) => `NIST/SEMATECH e-Handbook of Statistical Methods, ${section}`;
const normal = valuesOf("distributions", "M", handbook("1.3.6.7.1"));
const standard = distributionQuantile({ kind: "normal", mean: 100, sd: 1 });
const chiSquared = valuesOf("distributions", "M", handbook("1.3.6.7.4"));
const chi = (degrees: number, printed: string): PublishedValue =>
  chiSquared(
    `0.95 quantile of chi-squared, degrees of freedom ${degrees}`,
    printed,
    "1",
    () => 2 * gammaQuantile(0.95, degrees / 2),
  );
const distributions: readonly PublishedValue[] = [
  normal("0.95 quantile of the normal distribution", "1.645", "1", () => standard(0.95) - 100),
  normal("0.975 quantile of the normal distribution", "1.960", "1", () => standard(0.975) - 100),
  chi(1, "3.841"),
  chi(10, "18.307"),
  chi(30, "43.773"),
  valuesOf("distributions", "M", "Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, table 6.1, Γ(1.5)")(
    "mean of a Weibull distribution of shape 2, scale 1",
    "0.88623",
    "1",
    () => distributionMean({ kind: "weibull", scale: 1, shape: 2 }),
  ),
];

const reference = valuesOf("statistics", "R", "NIST Statistical Reference Datasets, univariate summary statistics");
const certified = { share: 1e-8, because: "certified to 15 digits; NumAcc4 has no exact double" };
const ofData = (name: string, values: readonly number[], mean: string, sd: string): readonly PublishedValue[] => [
  reference(`${name}: mean`, mean, "1", () => meanInterval(values).mean, { ...certified, share: 1e-14 }),
  reference(`${name}: standard deviation`, sd, "1", () => meanInterval(values).sd ?? NaN, certified),
];

const law = valuesOf(
  "statistics",
  "M",
  "Law, Simulation Modeling and Analysis, 4th ed., 2007, bank model, ten average delays",
);
const bank = [1.53, 1.66, 1.24, 2.34, 2.0, 1.69, 2.69, 2.86, 1.7, 2.6];
const student = valuesOf("statistics", "M", handbook("1.3.6.7.2"));
const t = (confidence: number, degrees: number, printed: string): PublishedValue =>
  student(`t at ${100 * confidence} %, degrees of freedom ${degrees}`, printed, "1", () =>
    tFactor(confidence, degrees + 1),
  );
const dunn = valuesOf("statistics", "M", "Dunn, Journal of the American Statistical Association 56, 1961, table 1");
const simultaneous = (comparisons: number, printed: string): PublishedValue =>
  dunn(`factor of ${comparisons} simultaneous intervals at 95 %, degrees of freedom 10`, printed, "1", () =>
    tFactor(1 - 0.05 / comparisons, 11),
  );
/** The least number of runs whose smallest and largest enclose one more run with a chance of 90 %. */
const fewestRuns = (): number => {
  let runs = 2;
  while (singleRunRange(Array.from({ length: runs }, (_, i) => i))?.method !== "order statistics") runs += 1;
  return runs;
};

const statistics: readonly PublishedValue[] = [
  ...ofData("Lew", lew, "-177.435", "277.332168044316"),
  ...ofData("Lottery", lottery, "518.958715596330", "291.699727470969"),
  ...ofData("Mavro", mavro, "2.001856", "0.000429123454003053"),
  ...ofData("NumAcc3", alternating(1000000.2, 1000000.1, 1000000.3), "1000000.2", "0.1"),
  ...ofData("NumAcc4", alternating(10000000.2, 10000000.1, 10000000.3), "10000000.2", "0.1"),
  law("mean", "2.03", "min", () => meanInterval(bank, 0.9).mean),
  law("variance", "0.31", "min²", () => (meanInterval(bank, 0.9).sd ?? NaN) ** 2),
  law("half width at 90 %", "0.32", "min", () => meanInterval(bank, 0.9).halfWidth ?? NaN),
  law("replications for a relative precision of 10 %", "27", "1", () => requiredReplications(bank, 0.1, 0.9) ?? NaN),
  t(0.95, 1, "12.706"),
  t(0.95, 4, "2.776"),
  t(0.95, 9, "2.262"),
  t(0.95, 19, "2.093"),
  t(0.9, 9, "1.833"),
  simultaneous(2, "2.63"),
  simultaneous(3, "2.87"),
  simultaneous(4, "3.04"),
  simultaneous(5, "3.17"),
  simultaneous(10, "3.58"),
  valuesOf("statistics", "M", "Hahn and Meeker, Statistical Intervals, 1991, section 5.4")(
    "runs whose smallest and largest enclose a further one with a chance of 90 %",
    "19",
    "1",
    fewestRuns,
  ),
];

/** The entry in row i, column j is the delay from x_j(k) to x_i(k + 1). */
function cycleMean(matrix: readonly (readonly number[])[]): number {
  const edges = matrix.flatMap((row, to) => row.map((weight, from) => ({ from, to, weight, tokens: 1 })));
  const answer = maxPlus({ nodes: matrix.length, edges });
  return answer.kind === "periodic" ? answer.ratio.ticks / answer.ratio.tokens : NaN;
}
const circuits: readonly PublishedValue[] = [
  valuesOf("max-plus", "M", "Baccelli, Cohen, Olsder and Quadrat, Synchronization and Linearity, 1992, chapter 1")(
    "eigenvalue of [[3, 7], [2, 4]]",
    "4.5",
    "1",
    () => cycleMean([[3, 7], [2, 4]]), // prettier-ignore
  ),
  valuesOf("max-plus", "M", "Heidergott, Olsder and van der Woude, Max Plus at Work, 2006, chapter 0")(
    "eigenvalue of [[2, 5], [3, 3]]",
    "4.0",
    "1",
    () => cycleMean([[2, 5], [3, 3]]), // prettier-ignore
  ),
];

/** A shift of planned minutes, some of them stopped. */
function shift(planned: number, stopped: number, counts: Pick<KpiInput, "PRI" | "PQ" | "GQ">): KpiInput {
  const elements = timeElements([
    { element: "APT", seconds: 60 * (planned - stopped) },
    { element: "ADET", seconds: 60 * stopped },
  ]);
  return { ...elements, ...counts };
}
const percent = (name: string, input: KpiInput): number =>
  100 * kpiSpecs.find((spec) => spec.name === name)!.value(input);
const firstShift = shift(420, 47, { PRI: 1, PQ: 19_271, GQ: 18_848 });
const secondShift = shift(480, 60, { PRI: 60, PQ: 400, GQ: 380 });
const article = valuesOf("indicators", "R", "What is OEE?, article, complete example of a first shift");
const remembered = valuesOf("indicators", "M", "What is OEE?, article, complete example of a first shift");
const calculator = valuesOf(
  "indicators",
  "R",
  "waycalculator.com, calculator of overall equipment effectiveness, example 1",
);
const indicators: readonly PublishedValue[] = [
  article("availability of 373 min of 420 min", "88.81", "%", () => percent("availability", firstShift)),
  remembered("performance of 19,271 at 1 s in 373 min", "86.11", "%", () => percent("effectiveness", firstShift)),
  remembered("good ones of 19,271 with 423 rejects", "97.80", "%", () => percent("quality ratio", firstShift)),
  remembered("OEE of this shift", "74.79", "%", () => percent("OEE index", firstShift), {
    share: 2e-4,
    because: "the example multiplies rounded factors",
  }),
  calculator("availability of 420 min of 480 min", "87.5", "%", () => percent("availability", secondShift)),
  calculator("performance of 400 at 1 min in 420 min", "95.2", "%", () => percent("effectiveness", secondShift)),
  calculator("OEE of 380 good ones at 1 min in 480 min", "79.1", "%", () => percent("OEE index", secondShift), {
    share: 0.001,
    because: "the example multiplies rounded factors",
  }),
];

const conversions = valuesOf("units", "M", "NIST Special Publication 811, 2008, appendix B.8");
const conversion = (unit: string, dimension: Dimension, printed: string, si: string): PublishedValue =>
  conversions(`1 ${unit}`, printed, si, () => inSi(1, unitSpelled(unit, dimension)!));
const units: readonly PublishedValue[] = [
  conversion("psi", "pressure", "6.894757e3", "Pa"),
  conversion("lb/h", "rate", "1.259979e-4", "kg/s"),
  conversion("oz", "mass", "2.834952e-2", "kg"),
  conversion("gal", "volume", "3.785412e-3", "m³"),
  conversion("hp", "power", "7.456999e2", "W"),
  conversion("lbf", "force", "4.448222", "N"),
];

export const statisticsValues: readonly PublishedValue[] = [
  ...random,
  ...distributions,
  ...statistics,
  ...circuits,
  ...indicators,
  ...units,
];
