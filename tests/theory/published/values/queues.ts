// Published values of queues, operators, production lines and renewal; they run on the cell's own interpreter and samplers.
import type { Interval } from "#analysis/statistics/interval.ts";
import { meanInterval } from "#analysis/statistics/interval.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import { distributionMean } from "#engine/distributions/moments.ts";
import { residualLife } from "#engine/distributions/residualLife.ts";
import { openRuns, over, runQueue, waiting, type OpenRun, type QueueRun } from "../../../support/queueRuns.ts";
import { exponential, machineRepair, saturatedLine } from "../../../support/queueTables.ts";
import { once, valuesOf, type PublishedValue } from "../publishedValue.ts";

const fixed = (value: number): Distribution => ({ kind: "fixed", value });
const ofOpen = (runs: readonly OpenRun[], figure: (run: OpenRun) => number): Interval =>
  meanInterval(runs.map(figure), 0.99);
const waitOf = (each: OpenRun): number => waiting(each) / each.run.rate("arrivals");

const hillier = valuesOf(
  "queues",
  "M",
  "Hillier and Lieberman, Introduction to Operations Research, chapter on queueing theory",
);
const oneServer = once(() => openRuns(1 / 2, exponential(1 / 3), 1, 12_000));
const twoServers = once(() => openRuns(1 / 2, exponential(1 / 3), 2, 20_000));
const openSource = valuesOf("queues", "R", "tests of an open-source package of queueing formulas");
const busyPair = once(() => openRuns(1 / 9, exponential(1 / 5), 2, 12_000));
const exact = { share: 5e-4, because: "a printed fraction" };

const open: readonly PublishedValue[] = [
  hillier("M/M/1, λ 2, μ 3: number in line", "1.3333", "1", () => ofOpen(oneServer(), waiting), exact),
  hillier("M/M/1, λ 2, μ 3: wait in line", "0.6667", "time", () => ofOpen(oneServer(), waitOf), exact),
  hillier("M/M/2, λ 2, μ 3: number in line", "0.0833", "1", () => ofOpen(twoServers(), waiting), exact),
  hillier("M/M/2, λ 2, μ 3: wait in line", "0.0417", "time", () => ofOpen(twoServers(), waitOf), exact),
  openSource("M/M/2, λ 9, μ 5: share that waits", "0.85263", "1", () =>
    ofOpen(busyPair(), (each) => each.system.shareAbove),
  ),
  openSource("M/M/2, λ 9, μ 5: number in line", "7.674", "1", () => ofOpen(busyPair(), waiting)),
  openSource("M/M/2, λ 9, μ 5: time in system", "1.053", "time", () =>
    ofOpen(busyPair(), (each) => each.system.mean / each.run.rate("arrivals")),
  ),
];

const taha = valuesOf("queues", "M", "Taha, Operations Research: An Introduction, machine servicing model");
const productive = (operators: number): Interval =>
  over(
    runQueue(machineRepair(22, operators, exponential(2), exponential(0.2)), 20, 50, 1500),
    (run) => (100 * run.meanIn("running")) / 22,
  );
const winston = valuesOf(
  "queues",
  "M",
  "Winston, Operations Research: Applications and Algorithms, machine repair model",
);
const repairShop = once(() => runQueue(machineRepair(5, 2, exponential(30), exponential(3)), 30, 1000, 60_000));
const broken = (run: QueueRun): number => 5 - run.meanIn("running");
const ashcroft = valuesOf("queues", "M", "Ashcroft, Journal of the Royal Statistical Society B 12, 1950, p. 145");
const running = (machines: number): Interval =>
  over(runQueue(machineRepair(machines, 1, exponential(1), fixed(0.1)), 20, 50, 2500), (run) => run.meanIn("running"));

const operators: readonly PublishedValue[] = [
  taha("22 machines, 1 operator: productive share", "45.44", "%", () => productive(1)),
  taha("22 machines, 2 operators: productive share", "80.15", "%", () => productive(2)),
  winston("5 machines, 2 repairers: number broken", "0.465", "1", () => over(repairShop(), broken)),
  winston("5 machines, 2 repairers: time broken", "3.08", "d", () =>
    over(repairShop(), (run) => broken(run) / run.rate("failures")),
  ),
  ashcroft("2 machines, constant service 0.1: number running", "1.8102", "1", () => running(2)),
  ashcroft("4 machines, constant service 0.1: number running", "3.5791", "1", () => running(4)),
  ashcroft("8 machines, constant service 0.1: number running", "6.8532", "1", () => running(8)),
];

const made = (stations: number, buffer: number): Interval =>
  over(runQueue(saturatedLine(stations, buffer, exponential(1)), 20, 100, 8000), (run) => run.rate("made"));
const hunt = valuesOf(
  "production lines",
  "M",
  "Hunt, Sequential arrays of waiting lines, Operations Research 4, 1956, p. 674",
);
const boling = valuesOf("production lines", "M", "Hillier and Boling, Operations Research 15, 1967, p. 286");
const line = (of: typeof hunt, stations: number, buffer: number, printed: string): PublishedValue =>
  of(`${stations} exponential stations, buffers of ${buffer}: throughput`, printed, "1", () => made(stations, buffer));
const failing = { run: exponential(120), repair: exponential(10) };

const lines: readonly PublishedValue[] = [
  line(hunt, 2, 0, "0.6667"),
  line(hunt, 2, 1, "0.75"),
  line(hunt, 2, 6, "0.8889"),
  line(hunt, 3, 0, "0.5641"),
  line(boling, 3, 1, "0.6705"),
  line(boling, 4, 0, "0.5148"),
  line(boling, 5, 0, "0.4858"),
  valuesOf("production lines", "M", "Buzacott, International Journal of Production Research 5, 1967, p. 183")(
    "2 stations that fail while they work, 120 and 10: efficiency",
    "0.85714",
    "1",
    () => over(runQueue(saturatedLine(2, 0, fixed(0.25), failing), 20, 0, 20_000), (run) => 0.25 * run.rate("made")),
  ),
];

const paradox = valuesOf(
  "renewal",
  "R",
  "third-bit.com, The Inspector's Paradox, three bus schedules with a mean headway of 10 min",
);
const wait = (headway: Distribution): number => distributionMean(residualLife(headway));
const renewal: readonly PublishedValue[] = [
  paradox("mean wait, regular headway", "5.0", "min", () => wait(fixed(10))),
  paradox("mean wait, headway of variance 64", "8.2", "min", () => wait({ kind: "gamma", mean: 10, sd: 8 })),
  paradox("mean wait, exponential headway", "10.0", "min", () => wait(exponential(10))),
];

export const queues: readonly PublishedValue[] = [...open, ...operators, ...lines, ...renewal];
