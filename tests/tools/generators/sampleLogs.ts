// Makes the sample logs in scenarios/logs: invented runs of shipped scenarios with known truth and planted faults.
import { waitCause } from "#analysis/study/summarizeStates.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { plannedEvents } from "#cell/records/plannedEvents.ts";

interface Row {
  readonly seconds: number;
  readonly until: number;
  readonly resource: string;
  readonly state: string;
  readonly step: string;
  readonly cause: string;
}

/** What every resource did in so many minutes, in the order in which it ended. */
function rowsOf(text: string, set: readonly string[], minutes: number): readonly Row[] {
  const { scenario } = readSettled(text, { name: "log", file: "log.yaml", set: [...set, "run.seed=log"] });
  if (!scenario) throw new Error("the scenario of a sample log can be read");
  const open = new Map<string, Omit<Row, "until">>();
  const rows: Row[] = [];
  for (const { seconds, resource, state, kind, step } of plannedEvents(planCell(scenario), 1, minutes * 60)) {
    const before = open.get(resource);
    if (before && seconds > before.seconds) rows.push({ ...before, until: seconds });
    open.set(resource, { seconds, resource, state, step: step ?? "", cause: waitCause(state, kind, scenario) ?? "" });
  }
  return rows;
}

const twoDigits = (value: number): string => String(Math.floor(value)).padStart(2, "0");

/** On an invented Monday from 06:00 on. */
function clockOf(seconds: number): string {
  const whole = Math.round(seconds * 1000);
  const ofDay = 6 * 3600 + Math.floor(whole / 1000);
  const clock = [ofDay / 3600, (ofDay / 60) % 60, ofDay % 60].map(twoDigits).join(":");
  return `2026-03-02T${clock}.${String(whole % 1000).padStart(3, "0")}`;
}

/** Faults: an empty cell, a row that comes twice, a time that goes back, and an hour and a half without a row. */
export function eventLog(text: string): string {
  const rows = [...rowsOf(text, [], 15)].toSorted((one, other) => one.seconds - other.seconds);
  const lines = rows.map(({ seconds, resource, state, step, cause }, i) => {
    // The second half comes after the gap.
    const at = i < rows.length / 2 ? seconds : seconds + 5400;
    return [clockOf(at), resource, state, step, cause];
  });
  lines[100]![0] = "";
  lines.splice(201, 0, lines[200]!);
  lines[300] = [clockOf(1), ...lines[300]!.slice(1)];
  return ["time,resource,state,step,cause", ...lines.map((cells) => cells.join(",")), ""].join("\n");
}

/** With semicolons and decimal commas. Faults: an empty duration, one below 0, a word, and two rows that come twice. */
export function stepLog(text: string): string {
  const rows = rowsOf(text, ["stations.*.steps.cool=+1 s"], 20).filter(
    ({ cause, step }) => cause === "" && step !== "",
  );
  const lines = rows.map(({ seconds, until, resource, step }) => {
    const duration = (until - seconds).toFixed(3).replace(".", ",");
    return [clockOf(until).replace("T", " "), resource, step, duration];
  });
  lines[50]![3] = "";
  lines[80]![3] = "-4,000";
  lines[120]![3] = "n/a";
  lines.splice(201, 0, lines[200]!);
  lines.splice(301, 0, lines[300]!);
  return ["end;station;step;duration [s]", ...lines.map((cells) => cells.join(";")), ""].join("\r\n");
}
