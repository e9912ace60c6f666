// Asks about times far from any blow molding cell: they are mostly a wrong unit.
import type { Distribution } from "#engine/distributions/distribution.ts";
import { distributionMean } from "#engine/distributions/moments.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";
import type { Path } from "#scenario/values/finding.ts";
import type { StationSpec } from "#scenario/scenario.ts";
import type { Resolution } from "./resolution.ts";
import type { ListedStation } from "./stationList.ts";

/** Least and most seconds of a step in any cell, from small bottles to drums (common practice, no published source). */
const usual = {
  recharge: [0.3, 600],
  drop: [0.1, 30],
  close: [0.1, 15],
  blow: [0.05, 60],
  cool: [0.5, 900],
  vent: [0.05, 60],
  open: [0.1, 15],
  remove: [0.1, 180],
} as const satisfies Readonly<Record<string, readonly [low: number, high: number]>>;

type Step = keyof typeof usual;

/** A step that takes no time is meant so. Measured times only: those from rates and estimates have no unit of time. */
export function checkTimes(
  stations: readonly (StationSpec | undefined)[],
  listed: readonly ListedStation[],
  resolution: Resolution,
): void {
  const asked = new Set<string>();
  listed.forEach(({ path, first }, i) => {
    const station = stations[i];
    if (!station || !first) return;
    for (const step of Object.keys(usual) as Step[]) {
      const time = timeOf(station, step);
      const place = placeOf(step, path, resolution);
      if (!time || asked.has(place.join("/"))) continue;
      asked.add(place.join("/"));
      askAbout(step, distributionMean(time), place, resolution);
    }
  });
}

function timeOf(station: StationSpec, step: Step): Distribution | undefined {
  if (step === "drop" || step === "recharge") {
    const own = station[step];
    return own.by === "time" ? own.time : undefined;
  }
  return step === "remove" ? station.remove.time : station[step];
}

function placeOf(step: Step, path: Path, { has }: Resolution): Path {
  if (step !== "drop" && step !== "recharge") return [...path, "steps", step];
  return has([...path, "delivery", step]) ? [...path, "delivery", step] : ["delivery", step];
}

function askAbout(step: Step, mean: number, path: Path, { report }: Resolution): void {
  const [low, high] = usual[step];
  if (mean === 0 || (mean >= low && mean <= high)) return;
  const time = (value: number): string => `${Number(value.toPrecision(3))} s`;
  const meant = inSeconds(mean).find((each) => each >= low && each <= high);
  report({
    code: "time-unusual",
    message: `${step} takes ${formatQuantity(mean, "time", { digits: 3 })} on average, which is unusual.`,
    expected: `${time(low)} to ${time(high)} (common practice, no published source)`,
    remedy: meant === undefined ? "Check the number and the unit." : `Check the unit: did you mean ${time(meant)}?`,
    path,
    severity: "warning",
  });
}

/** The same number in seconds where it was probably written in milliseconds, minutes or hours. */
function inSeconds(mean: number): readonly number[] {
  if (mean < 0.1) return [mean * 1000];
  return mean < 60 ? [] : [mean / 60, mean / 3600];
}
