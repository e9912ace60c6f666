// Describes every CSV file that comes out, column by column; the data dictionary is written from it.
import {
  halfWidth,
  integer,
  meanColumn,
  measureColumn,
  number,
  resourceColumn,
  scenarioColumn,
  text,
  truth,
  unitColumn,
} from "./columns.ts";
import { calendarSpec } from "./calendarTable.ts";
import { chooseSpec } from "#report/tables/asked/chooseTable.ts";
import { changesSpec } from "#report/tables/asked/changesTable.ts";
import { costSpec } from "./costTable.ts";
import { fitSpec } from "#report/fit/fitTable.ts";
import { matchSpec } from "#report/match/matchTable.ts";
import { kpiSpec } from "./kpiTable.ts";
import { lostSpec } from "#report/tables/asked/lostTable.ts";
import { promiseLeversSpec } from "#report/tables/asked/promiseLeversTable.ts";
import { finishSpec, promiseSpec } from "#report/tables/asked/promiseTables.ts";
import { slackSpec } from "#report/tables/asked/slackTable.ts";
import { measuredSpec } from "#report/tables/asked/measuredTable.ts";
import { sweepSpec } from "#report/tables/asked/sweepTable.ts";
import { totalsSpec } from "#report/tables/asked/totalsTable.ts";
import { paybackSpec } from "./paybackTable.ts";
import { stopsSpec } from "./stopsTable.ts";
import { stepNames } from "#cell/words/stepNames.ts";
import type { ColumnSpec, TableSpec } from "./table.ts";
import { withVariantColumn } from "./variantColumn.ts";

const orderStatistic = "an order statistic; empty where the replications are too few";

export const throughputSpec: TableSpec = {
  name: "throughput",
  meaning:
    "One measure of one resource of one scenario, over all replications. Without quality checks every removed part counts as good; with a takeaway a part is good after the last server.",
  columns: [
    scenarioColumn,
    resourceColumn,
    measureColumn,
    unitColumn,
    meanColumn,
    halfWidth("half_width_95", "the mean"),
    number("sd", "Standard deviation between replications (n − 1); empty with one replication"),
    number("min", "Smallest replication"),
    number("p05", "5 % of the replications lie below"),
    number("p05_low", `Low end of the 95 % interval of p05, ${orderStatistic}`),
    number("p05_high", `High end of the 95 % interval of p05, ${orderStatistic}`),
    number("p50", "Half of the replications lie below"),
    number("p95", "95 % of the replications lie below"),
    number("p95_low", `Low end of the 95 % interval of p95, ${orderStatistic}`),
    number("p95_high", `High end of the 95 % interval of p95, ${orderStatistic}`),
    number("max", "Largest replication"),
    integer("replications", "Number of replications"),
    text(
      "control",
      "Rare stops whose known rate the mean and its half width use (control variates); empty for the plain mean of the replications, which replications.csv has in any case",
    ),
  ],
};

export const timeByStateSpec: TableSpec = {
  name: "time-by-state",
  meaning: "The share of time that one resource spent in one state; the shares of a resource add up to 1.",
  columns: [
    scenarioColumn,
    resourceColumn,
    text("state", "What the resource was doing or waiting for"),
    text("kind", "`working`, `waiting`, `stopped`, `set-up` or `off`"),
    text("cause", "What a waiting resource waits for; empty for all other states"),
    number("share", "Share of the observed time, from 0 to 1"),
    halfWidth("half_width_95", "the share"),
    number("seconds_per_hour", "The share in seconds of each hour", "s/h"),
  ],
};

export const bottleneckSpec: TableSpec = {
  name: "bottleneck",
  meaning:
    "One resource, ranked by its share of the critical path, or one of its steps. A step that keeps several resources busy belongs to the one that it waited for.",
  columns: [
    scenarioColumn,
    text("level", "`resource`, or `step` for the steps beneath it"),
    integer("rank", "Of a resource among resources, of a step within its resource; 1 has the largest critical share"),
    text("resource", "Resource, as the state times name it; identical ones together, separated by commas"),
    text("step", "Step whose time belongs to the resource; empty for the resource itself"),
    number("critical_share", "Share of the critical path, from 0 to 1; those of all resources add up to 1"),
    halfWidth("half_width_95", "the critical share"),
    number("tied_share", "The part of the critical share whose start more than one completion bound at once"),
    number("utilization", "Working time over observed time of the resource, from 0 to 1"),
    number(
      "active_share",
      "Share of time in which the resource was active, from 0 to 1: also while a mold awaits removal",
    ),
    number("longest_active_share", "Share of time in which the resource's active period was the longest of all"),
    number("longest_active_alone", "The part of that in which no other resource was about to take over"),
    number(
      "slack_s_per_shot",
      "Seconds a shot by which the resource's own circuit may grow before it sets the ideal cycle; empty for a step, and where no order is fixed",
      "s",
    ),
    number(
      "elasticity",
      "Change of throughput in percent for 1 % more time in the whole step, of all identical resources together",
    ),
    halfWidth("elasticity_half_width_95", "the elasticity"),
    text(
      "elasticity_method",
      "How the elasticity was found, or why there is none; `explain elasticity` lists the values",
    ),
  ],
};

export const idealCycleSpec: TableSpec = {
  name: "ideal-cycle",
  meaning: "One step in one period of the ideal cycle, all times at their means.",
  columns: [
    scenarioColumn,
    resourceColumn,
    text("step", "Step of the resource"),
    text("station", "Station that the step serves"),
    integer("shot", "Number of the shot within the period, from 1"),
    number("start_s", "Start, from the start of the period", "s"),
    number("end_s", "End, from the start of the period", "s"),
    truth("critical", "`true` where the step lies on a critical circuit"),
  ],
};

export const circuitsSpec: TableSpec = {
  name: "circuits",
  meaning: "One circuit of steps that must follow each other; the slowest sets the ideal cycle.",
  columns: [
    scenarioColumn,
    text("circuit", "Resource that the circuit keeps busy; the slowest circuit comes first"),
    text("steps", "The steps along the circuit"),
    number("seconds", "Time once around", "s"),
    integer("shots", "Shots made while going once around"),
    number("seconds_per_shot", "seconds / shots", "s"),
    number(
      "slack_s_per_shot",
      "Seconds a shot by which the circuit may grow before it sets the ideal cycle; empty where no order is fixed",
      "s",
    ),
    number("slack_s", "The same for once around, in which it makes `shots`: slack_s_per_shot × shots", "s"),
    truth("critical", "`true` where no circuit is slower"),
    text("method", "How the order of the stations was found"),
  ],
};

export const replicationsSpec: TableSpec = {
  name: "replications",
  meaning: "One measure of one resource in one replication.",
  columns: [
    scenarioColumn,
    integer("replication", "Number of the replication, from 1"),
    resourceColumn,
    measureColumn,
    unitColumn,
    number("value", "Value in this replication"),
  ],
};

export const comparisonSpec: TableSpec = {
  name: "comparison",
  meaning:
    "One measure of a scenario against a base, paired replication by replication. The pairs are those that `--against` asks for.",
  columns: [
    text("base", "Name of the scenario that is compared with"),
    text("other", "Name of the scenario that is compared"),
    resourceColumn,
    measureColumn,
    unitColumn,
    number("difference", "Mean of other − base over the pairs"),
    halfWidth("half_width_95", "the difference"),
    number(
      "simultaneous_half_width_95",
      "Half width at which all pairs of this measure hold together with 95 % confidence",
    ),
    integer("comparisons", "Number of pairs that hold together"),
    text("method", "How they hold together: `Bonferroni`, each at 1 − 0.05 / comparisons; empty with one pair"),
    number("ratio", "Mean of the other / mean of the base"),
    integer("pairs", "Number of paired replications"),
    number("correlation", "Correlation between the pairs that the common random numbers achieved"),
    text("verdict", "What the interval says, in words"),
  ],
};

export const eventsSpec: TableSpec = {
  name: "events",
  meaning: "One resource that entered a state, or began anew in it, in one replication; written with `--events`.",
  columns: [
    integer("replication", "Number of the replication, from 1"),
    number("time_s", "From the start of the replication, warm-up included", "s"),
    resourceColumn,
    text("state", "State that the resource entered"),
    text("step", "Step that shows this state, or that is waited for"),
    text("cause", "What a waiting resource waits for"),
    text("station", "Station whose shot it serves"),
    integer("shot", "Number of the shot at this station, from 1"),
    text("bound_by_resource", "Whose step ended last of all that this start needed"),
    number("bound_by_time_s", "When that step had begun", "s"),
    text("operator", "Operator who does the task"),
    integer("parts", "Parts of the removal that ends here; with a takeaway, parts that leave the resource now"),
  ],
};

/** The steps of every kind of cell that have a column for each shot. */
export const stepsOfShots = [
  "valve.toPort",
  "mold.drop",
  "mold.close",
  "mold.blow",
  "mold.cool",
  "mold.vent",
  "mold.open",
  "mold.remove",
] as const;

export function stepColumn(role: (typeof stepsOfShots)[number]): ColumnSpec {
  const step = stepNames[role];
  const meaning =
    role === "valve.toPort"
      ? "Valve begins to shift to the station's port, from the start of the replication"
      : `Step \`${step}\` begins; empty where the run ended before`;
  return number(`${step.replaceAll(" ", "_")}_start_s`, meaning, "s");
}

export const shotsSpec: TableSpec = {
  name: "shots",
  meaning:
    "One shot of one station in one replication, with the start of each step; the travel and the cut of a continuous extruder and a step of the user's own have columns of their own. Written with `--events`.",
  columns: [
    integer("replication", "Number of the replication, from 1"),
    text("station", "Station that got the shot"),
    integer("shot", "Number of the shot at this station, from 1"),
    ...stepsOfShots.map(stepColumn),
    number(
      "hang_s",
      "From the end of the drop, or from the catch of a parison that grows all the time, to the closed mold; empty where the run ended before",
      "s",
    ),
    number(
      "sag",
      "Share by which the parison has grown longer by then, from its own drop and hang; empty where material or parison length are not given",
    ),
    number(
      "time_at_heat_s",
      "From hopper to die, first in, first out, every wait included; empty where the hold-up is not given, and for melt that was in the machine at the start",
      "s",
    ),
    number(
      "demold_temperature_c",
      "Temperature of the thickest place when the mold begins to open, from the shot's own time in contact; empty where material or `wall.thickest` are not given",
      "°C",
    ),
  ],
};

/** All files, in the order of the data dictionary. */
export const windowSpec: TableSpec = {
  name: "window",
  meaning:
    "One quantity of the process window of one station, at mean step times; after a run also how hang, sag, time at heat and demold temperature spread over its shots, all replications together. Only where a material is named, and only the rows whose inputs are given.",
  columns: [
    scenarioColumn,
    text("station", "Name of the station"),
    text("quantity", "Computed quantity"),
    number("value", "Its value, in the unit of the next column; empty where it is without end"),
    unitColumn,
    number("low_limit", "Lowest value that the product or machine allows; empty where there is none"),
    number("high_limit", "Highest allowed value; empty where there is none"),
    text("verdict", "`inside`, `below` or `above` the limits, or `no limit`"),
    text("remedy", "What to do outside the limits"),
    text("source", "Where the formula or the limit comes from"),
  ],
};

const scenarioSpecs: readonly TableSpec[] = [
  throughputSpec,
  totalsSpec,
  measuredSpec,
  timeByStateSpec,
  bottleneckSpec,
  idealCycleSpec,
  circuitsSpec,
  promiseSpec,
  finishSpec,
  promiseLeversSpec,
  slackSpec,
  replicationsSpec,
  comparisonSpec,
  paybackSpec,
  sweepSpec,
  chooseSpec,
  kpiSpec,
  changesSpec,
  lostSpec,
  costSpec,
  stopsSpec,
  calendarSpec,
  windowSpec,
  matchSpec,
  eventsSpec,
  shotsSpec,
];

/** A fit is of a log, not of a scenario. */
export const tableSpecs: readonly TableSpec[] = [...scenarioSpecs.map(withVariantColumn), fitSpec];
