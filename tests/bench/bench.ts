// The benchmark: measures and prints its figures beside the baseline; it asserts nothing, because times depend on the machine.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import os from "node:os";
import { changesCost } from "./changesCost.ts";
import { cycleCost } from "./cycleCost.ts";
import { eventListCost } from "./eventListCost.ts";
import type { Figure } from "./figure.ts";
import { pageCost } from "./page/pageCost.ts";
import type { Places } from "./places.ts";
import { jobsCost, startUpCost } from "./startUpCost.ts";
import { sensitivityCost } from "./sensitivityCost.ts";
import { sweepCost } from "./sweepCost.ts";
import { yearCost } from "./yearCost.ts";

/** Ratios are comparable between machines, times and memory are not. */
interface Bench {
  readonly note: string;
  readonly machine: {
    readonly cores: number;
    readonly node: string;
    readonly architecture: string;
    /** Load average of the minute before, for each core; well above 0, all figures are doubtful. */
    readonly loadBefore: number;
  };
  readonly figures: readonly Figure[];
}

const note =
  "Measured by `npm run bench -- --json tests/bench/baseline.json`. Ratios are medians of paired rounds; seconds, " +
  "nanoseconds and megabytes are those of the machine described here. Measure on an idle machine: on a busy one kernel " +
  "and model were seen to take twice as long, and a bare draw hardly longer.";

function measure(places: Places, isQuick: boolean): Bench {
  const rounds = (many: number): number => (isQuick ? 1 : many);
  const cores = os.availableParallelism();
  const loadBefore = rounded(os.loadavg()[0]! / cores);
  const figures = [
    ...cycleCost(places, rounds(9)),
    ...yearCost(places, rounds(3)),
    ...startUpCost(places, rounds(21)),
    ...jobsCost(places, rounds(3)),
    ...pageCost(places, rounds(7)),
    ...sweepCost(places, rounds(3)),
    ...changesCost(places, rounds(3)),
    ...sensitivityCost(places, rounds(5)),
    ...eventListCost(places, rounds(5)),
  ];
  const machine = { cores, node: process.version, architecture: process.arch, loadBefore };
  return { note, machine, figures: figures.map((figure) => ({ ...figure, value: rounded(figure.value) })) };
}

function rounded(value: number): number {
  return Number(value.toPrecision(3));
}

function table(now: Bench, baseline: Bench | undefined): string {
  const before = new Map(baseline?.figures.map((figure) => [figure.name, String(figure.value)]));
  const rows = now.figures.map((figure) => [
    figure.name,
    String(figure.value),
    before.get(figure.name) ?? "",
    figure.unit,
    figure.meaning,
  ]);
  const lines = [["figure", "now", "baseline", "unit", "meaning"], ...rows];
  const widths = [0, 1, 2, 3].map((column) => Math.max(...lines.map((line) => line[column]!.length)));
  return lines.map((line) => line.map((cell, i) => cell.padEnd(widths[i] ?? 0)).join("  ")).join("\n");
}

function machineLine({ cores, node, architecture, loadBefore }: Bench["machine"]): string {
  return `${cores} cores, Node ${node}, ${architecture}, load before ${loadBefore} a core`;
}

const [placesText, ...options] = process.argv.slice(2);
const places = JSON.parse(placesText!) as Places;
const baseline = existsSync(places.baseline) ? (JSON.parse(readFileSync(places.baseline, "utf8")) as Bench) : undefined;
const now = measure(places, options.includes("--quick"));
const machines = baseline === undefined ? "" : `; baseline: ${machineLine(baseline.machine)}`;
process.stderr.write(`${table(now, baseline)}\nnow: ${machineLine(now.machine)}${machines}\n`);
const json = `${JSON.stringify(now, undefined, 2)}\n`;
const file = options[options.indexOf("--json") + 1];
if (options.includes("--json") && file !== undefined) writeFileSync(file, json);
else process.stdout.write(json);
