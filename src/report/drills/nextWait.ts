// Drills on waits: who waits next, and for what.
import { ascending } from "d3-array";
import { stateMeanings } from "#cell/words/stateMeanings.ts";
import type { StateName } from "#cell/words/stateNames.ts";
import { ownerName } from "#report/words/tradeWords.ts";
import { seconds } from "#report/words/digits.ts";
import type { Choice } from "#report/lessons/exercise.ts";
import { runOnce, type CellRun, type Spell } from "#report/lessons/spells.ts";
import type { Drill, ReadCell } from "./drill.ts";

const mostDrills = 6;

export function nextWaitDrills(read: ReadCell): readonly Drill[] {
  const cells = [
    read("two-molds.yaml"),
    read("three-molds.yaml"),
    read("three-molds.yaml", ["delivery.recharge=2.6 s"]),
  ];
  const byCell = cells.map((cell) => nextWaits(runOnce(cell)).slice(0, mostDrills / cells.length));
  return Array.from({ length: mostDrills }, (_, i) => byCell.flatMap((drills) => drills[i] ?? [])).flat();
}

/** Seconds: a chart that ends a little before the wait. */
const leadTime = 1.5;
/** Seconds of the run that a drill leaves out, so that the chart shows whole cycles. */
const settled = 30;
/** Seconds by which the next wait comes before any other choice. */
const clear = 0.3;

/** One for each wait that no other begins with; every other choice begins later. */
export function nextWaits(run: CellRun): readonly Drill[] {
  const waits = run.spells.filter(isWait);
  return waits.flatMap((wait, i) => {
    const at = wait.start - leadTime;
    const [before, after] = [waits[i - 1], waits[i + 1]];
    const isClear =
      (before === undefined || before.start < at) && (after === undefined || after.start > wait.start + clear);
    if (!isClear || at < settled || wait.end === null) return [];
    const others = otherWaits(wait, waits);
    if (others.length < 2) return [];
    const chart = { title: "The cell up to this moment", run, from: Math.max(0, at - 20), at, until: wait.end };
    const choices = inFixedOrder([rightChoice(wait), ...others.slice(0, 3).map((other) => wrongChoice(other, wait))]);
    const look = "The chart ends a moment before a resource begins to wait.";
    return [{ look, charts: [chart], exercise: { ask: "Which resource waits next, and for what?", choices } }];
  });
}

/** Screw and stations; a free operator or a valve in neutral costs nothing. */
function isWait({ kind, owner }: Spell): boolean {
  return kind === "waiting" && (owner === "screw" || owner === "station");
}

/** The first of each other resource and state that begins later. */
function otherWaits(wait: Spell, waits: readonly Spell[]): readonly Spell[] {
  const later = waits.filter(({ start }) => start > wait.start);
  return later.filter(
    (one, i) => wordsOf(one) !== wordsOf(wait) && later.findIndex((other) => wordsOf(other) === wordsOf(one)) === i,
  );
}

function wordsOf({ resource, state }: Spell): string {
  const cause = stateMeanings[state as StateName].cause ?? state;
  const name = ownerName(resource);
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${cause}.`;
}

function rightChoice(wait: Spell): Choice {
  return { text: wordsOf(wait), isRight: true, because: `This wait begins at ${seconds(wait.start)}.` };
}

function wrongChoice(other: Spell, wait: Spell): Choice {
  const lead = other.start - wait.start;
  const because =
    lead > farAway
      ? "No such wait begins within a minute."
      : `This wait begins at ${seconds(other.start)}, ${seconds(lead)} after another one.`;
  return { text: wordsOf(other), isRight: false, because };
}

/** Seconds. */
const farAway = 60;

/** By their words, so that the place of a choice shows nothing. */
function inFixedOrder(choices: readonly Choice[]): readonly Choice[] {
  return choices.toSorted((one, other) => ascending(one.text, other.text));
}
