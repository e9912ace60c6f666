// Drills on dispatch: which mold gets the next drop, and by which rule.
import { stateNames } from "#cell/words/stateNames.ts";
import { seconds } from "#report/words/digits.ts";
import type { Choice } from "#report/lessons/exercise.ts";
import { runOnce, type CellRun, type Spell } from "#report/lessons/spells.ts";
import type { DispatchRule, StationSpec } from "#scenario/scenario.ts";
import type { Drill, ReadCell } from "./drill.ts";

const rules: readonly DispatchRule[] = ["first-ready", "longest-since-drop", "priority"];

const drillsOfRule = 3;

interface NextDrop extends Drill {
  /** Another rule would serve another mold. */
  readonly rulesDiffer: boolean;
}

export function nextDropDrills(read: ReadCell): readonly Drill[] {
  const byRule = rules.map((rule) => {
    const all = nextDrops(runOnce(read("three-molds.yaml", [`valve.dispatch=${rule}`])));
    return all.filter(({ rulesDiffer }) => rulesDiffer).slice(0, drillsOfRule);
  });
  return Array.from({ length: drillsOfRule }, (_, i) => byRule.flatMap((drills) => drills[i] ?? [])).flat();
}

/** One for each shot that found two molds or more waiting, without a tie. */
export function nextDrops(run: CellRun): readonly NextDrop[] {
  return run.spells.flatMap((shift) => {
    if (shift.owner !== "station" || shift.role !== "valve.toPort") return [];
    const waiting = waitingFor(shift, run);
    const recharge = rechargeBefore(shift, run);
    if (waiting.length < 2 || recharge === undefined || shift.end === null) return [];
    return hasTie(waiting) ? [] : [drillOf(shift, shift.end, recharge, waiting, run)];
  });
}

/** A station that was ready when the valve began to shift. */
interface Ready {
  readonly station: StationSpec;
  readonly since: number;
  readonly lastDrop: number;
}

const waits: readonly string[] = [stateNames.awaitingMelt, stateNames.awaitingTurn, stateNames.awaitingValve];

function waitingFor(shift: Spell, run: CellRun): readonly Ready[] {
  return run.scenario.stations.flatMap((station) => {
    const own = run.spells.filter(({ resource, start }) => resource === station.name && start < shift.start);
    const busy = own.findLast(({ state }) => !waits.includes(state));
    const lastDrop = own.findLast(({ role }) => role === "mold.drop")?.start ?? -1;
    const isReady = own.at(-1)?.end !== null && waits.includes(own.at(-1)?.state ?? "");
    const stillWaits = isReady && (own.at(-1)?.end ?? 0) >= shift.start;
    return stillWaits && typeof busy?.end === "number" ? [{ station, since: busy.end, lastDrop }] : [];
  });
}

function rechargeBefore(shift: Spell, { spells }: CellRun): Spell | undefined {
  return spells.findLast(({ role, start }) => role === "screw.recharge" && start < shift.start);
}

function hasTie(waiting: readonly Ready[]): boolean {
  const differ = (key: (ready: Ready) => number): boolean => new Set(waiting.map(key)).size === waiting.length;
  return !differ(({ since }) => since) || !differ(({ lastDrop }) => lastDrop);
}

function drillOf(shift: Spell, until: number, recharge: Spell, waiting: readonly Ready[], run: CellRun): NextDrop {
  const { dispatch } = run.scenario.valve;
  const choices = run.scenario.stations.map((station): Choice => {
    const ready = waiting.find((each) => each.station === station);
    const isRight = station.name === shift.resource;
    return { text: station.name, isRight, because: reason(station, ready, shift, run) };
  });
  const look = `The screw recharges. ${ruleWords[dispatch]}${priorities(run)}`;
  const ask = `Which mold gets the next drop by \`${dispatch}\`?`;
  const from = Math.max(0, Math.min(...waiting.map(({ lastDrop }) => lastDrop)) - 1);
  // Both must have become ready before the chart ends.
  const at = Math.max(recharge.start, ...waiting.map(({ since }) => since));
  return {
    look,
    charts: [{ title: "The cell up to this moment", run, from, at: Math.min(at + margin, shift.start), until }],
    exercise: { ask, choices },
    rulesDiffer:
      new Set([
        firstBy(waiting, ({ since }) => since),
        firstBy(waiting, ({ lastDrop }) => lastDrop),
        firstBy(waiting, ({ station }) => station.priority),
      ]).size > 1,
  };
}

function firstBy(waiting: readonly Ready[], key: (ready: Ready) => number): string {
  return waiting.toSorted((one, other) => key(one) - key(other))[0]!.station.name;
}

/** Seconds that a wait must be seen in the chart. */
const margin = 0.2;

const ruleWords: Readonly<Record<DispatchRule, string>> = {
  "first-ready": "The rule is `first-ready`: the mold that has been ready longest gets the shot.",
  "longest-since-drop":
    "The rule is `longest-since-drop`: of the molds that are ready, the one whose last drop is longest ago gets the shot.",
  alternate: "The rule is `alternate`: the molds get their shots in a fixed rotation.",
  priority: "The rule is `priority`: of the molds that are ready, the one with the smallest number gets the shot.",
};

function priorities({ scenario: { stations, valve } }: CellRun): string {
  if (valve.dispatch !== "priority") return "";
  return ` The numbers: ${stations.map(({ name, priority }) => `${name} ${priority}`).join(", ")}.`;
}

function reason(station: StationSpec, ready: Ready | undefined, shift: Spell, run: CellRun): string {
  const name = `${station.name.charAt(0).toUpperCase()}${station.name.slice(1)}`;
  if (ready === undefined)
    return `${name} is not ready when the shot is full, at ${seconds(shift.start)}: ${stateAt(station.name, shift.start, run)}.`;
  const isRight = station.name === shift.resource;
  const { dispatch } = run.scenario.valve;
  if (dispatch === "priority") {
    const words = `${name} is ready and has the number ${station.priority}`;
    return isRight ? `${words}, the smallest of those that are ready.` : `${words}. A smaller number is ready as well.`;
  }
  const [words, other] =
    dispatch === "longest-since-drop"
      ? [
          `The last drop of ${station.name} began at ${seconds(ready.lastDrop)}`,
          "The last drop of another ready mold is longer ago.",
        ]
      : [`${name} has been ready since ${seconds(ready.since)}`, "Another mold has been ready longer."];
  return isRight ? `${words}, and no ready mold comes before it.` : `${words}. ${other}`;
}

function stateAt(resource: string, at: number, { spells }: CellRun): string {
  return spells.findLast((spell) => spell.resource === resource && spell.start <= at)?.state ?? "";
}
