// The spread of the shots of a run: hang, sag, time at heat and demold temperature of each station, with the limits of product and material.
import { mean } from "simple-statistics";
import { deliveredSag } from "#physics/parison/deliveredSag.ts";
import { demoldLimit, stationCooling } from "#cell/layers/stationCooling.ts";
import type { ContactRecord, ParisonRecord } from "#cell/records/parisonRecord.ts";
import { allLots, lotOf } from "#cell/run/parisonSample.ts";
import { sagInput } from "#cell/records/sagInput.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import { quantiles, type Quantiles } from "#analysis/statistics/quantiles.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";

export interface ShotSpread {
  readonly station: string;
  readonly quantity: "hang time" | "sag" | "time at heat" | "demold temperature";
  readonly unit: "s" | "1" | "°C";
  readonly mean: number;
  readonly quantiles: Quantiles;
  readonly max: number;
  /** Null where no limit is given. */
  readonly limit: number | null;
  /** Share of the shots above it. */
  readonly beyond: number;
  /** The remedy; "" where no shot is above the limit. */
  readonly remedy: string;
  readonly source: string;
}

/** Over all replications; a station without a material has no rows. */
export function shotSpreads(scenario: Scenario, answers: readonly ReplicationAnswer[]): readonly ShotSpread[] {
  const records = answers.flatMap(({ parisons }) => parisons);
  return scenario.stations.flatMap((station) => {
    const own = records.filter((record) => record.station === station.name);
    return [
      hangs(station, own),
      sags(scenario, station, own),
      timesAtHeat(station, own),
      demoldTemperatures(scenario, station, own),
    ].flatMap((each) => each ?? []);
  });
}

type Description = Pick<ShotSpread, "quantity" | "unit" | "source" | "limit" | "remedy">;

function hangs({ name }: StationSpec, records: readonly ParisonRecord[]): ShotSpread | undefined {
  const longest = records.map(({ longestHang }) => longestHang);
  return spread(
    name,
    { values: together(records.map((record) => record.hangs)), longest },
    {
      quantity: "hang time",
      unit: "s",
      source: "simulated: from the end of the drop to the closed mold",
      limit: null,
      remedy: "",
    },
  );
}

function sags(scenario: Scenario, station: StationSpec, records: readonly ParisonRecord[]): ShotSpread | undefined {
  const hanging = sagInput(scenario, station);
  if (!hanging) return undefined;
  const { melt, length } = hanging;
  const sagOf = (delivery: number, hold: number): number => deliveredSag(melt, { length, delivery, hold });
  const holds = together(records.map((record) => record.hangs));
  const values = together(records.map(({ drops }) => drops)).map((drop, i) => sagOf(drop, holds[i]!));
  const longest = records.map(({ mostSagging: most }) => most && sagOf(most.drop, most.hang));
  return spread(
    station.name,
    { values, longest },
    {
      quantity: "sag",
      unit: "1",
      source:
        "each simulated drop and hang; derived after Trouton, Proceedings of the Royal Society A 77, 1906, p. 426",
      limit: station.process?.values["product.sagLimit"] ?? null,
      remedy: "Drop faster, close sooner or more evenly, run the melt cooler, or use a stiffer grade.",
    },
  );
}

function timesAtHeat({ name, process }: StationSpec, records: readonly ParisonRecord[]): ShotSpread | undefined {
  const longest = records.map(({ longestAtHeat }) => longestAtHeat);
  return spread(
    name,
    { values: together(records.map((record) => record.timesAtHeat)), longest },
    {
      quantity: "time at heat",
      unit: "s",
      source:
        "simulated: first in, first out through the hold-up, waits included; melt in dead corners stays far longer",
      limit: process?.material.timeAtHeat?.value ?? null,
      remedy: "Use a smaller hold-up, fewer waits of the screw, or a better stabilized compound.",
    },
  );
}

/** The share beyond the limit is that of all shots, not of the sample alone. */
function demoldTemperatures(
  scenario: Scenario,
  station: StationSpec,
  records: readonly ParisonRecord[],
): ShotSpread | undefined {
  const cooling = stationCooling(scenario, station);
  const found = records.flatMap(({ contact }) => contact ?? []);
  if (!cooling || found.length === 0) return undefined;
  const temperatureAfter = remembered(cooling.temperature);
  const all = spread(
    station.name,
    {
      values: together(found.map(({ contacts }) => contacts)).map(temperatureAfter),
      longest: found.map(({ shortest }) => (shortest === null ? null : temperatureAfter(shortest))),
    },
    {
      quantity: "demold temperature",
      unit: "°C",
      source: "each simulated time in contact, until the mold begins to open; cooling as in the process window",
      limit: demoldLimit(scenario, cooling),
      remedy: "Cool longer or more evenly, make the thickest place thinner, or run the mold or the melt cooler.",
    },
  );
  if (!all) return undefined;
  const total = (of: (record: ContactRecord) => number): number => found.reduce((sum, each) => sum + of(each), 0);
  const beyond = total(({ underCooled }) => underCooled) / total(({ shots }) => shots);
  return { ...all, beyond, remedy: beyond > 0 ? all.remedy : "" };
}

/** Where the times of the cell are fixed, most shots are in contact equally long. */
function remembered(course: (time: number) => number): (time: number) => number {
  const known = new Map<number, number>();
  return (time) => {
    const value = known.get(time) ?? course(time);
    known.set(time, value);
    return value;
  };
}

/** Shots of one station: more of them change no digit that is shown. */
const mostShots = 65_536;

/** The samples of all replications, or a fair part of them; of lists of the same lengths it takes the same places. */
function together(samples: readonly Float64Array[]): number[] {
  const count = samples.reduce((sum, { length }) => sum + length, 0);
  const limit = allLots * Math.min(1, mostShots / count);
  const values: number[] = [];
  let number = 0;
  for (const sample of samples) for (const value of sample) if (lotOf(number++) < limit) values.push(value);
  return values;
}

interface Found {
  /** A sample of all replications. */
  readonly values: readonly number[];
  /** The longest of each replication. */
  readonly longest: readonly (number | null)[];
}

/** A sum of infinite values and a place between two of them are no number in a library; the sag of a parison that breaks is infinite. */
const orInfinite = (value: number): number => (Number.isNaN(value) ? Infinity : value);

function spread(station: string, { values, longest }: Found, description: Description): ShotSpread | undefined {
  if (values.length === 0) return undefined;
  const max = longest.reduce<number>((most, each) => Math.max(most, each ?? 0), 0);
  const limit = description.limit ?? Infinity;
  const above = values.filter((value) => value > limit).length;
  // The sample may contain none of the few shots above the limit.
  const beyond = (above === 0 && max > limit ? 1 : above) / values.length;
  const { p05, p25, p50, p75, p95 } = quantiles(values);
  return {
    station,
    ...description,
    mean: orInfinite(mean(values.slice())),
    quantiles: {
      p05: orInfinite(p05),
      p25: orInfinite(p25),
      p50: orInfinite(p50),
      p75: orInfinite(p75),
      p95: orInfinite(p95),
    },
    max,
    beyond,
    remedy: beyond > 0 ? description.remedy : "",
  };
}
