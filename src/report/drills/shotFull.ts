// Drills on screw and molds: will the shot be full before the next mold opens?
import { stateNames } from "#cell/words/stateNames.ts";
import { seconds } from "#report/words/digits.ts";
import { findSpells } from "#report/lessons/findSpells.ts";
import { runOnce, type CellRun, type Spell } from "#report/lessons/spells.ts";
import type { Drill, ReadCell } from "./drill.ts";

const drillsOfCell = 4;

export function shotFullDrills(read: ReadCell): readonly Drill[] {
  const cells = [read("two-molds.yaml", ["delivery.recharge={ gamma: [2.4 s, 0.8 s] }"]), read("three-molds.yaml")];
  const byCell = cells.map((cell) => mixed(shotsFull(runOnce(cell))));
  return Array.from({ length: drillsOfCell }, (_, i) => byCell.flatMap((drills) => drills[i] ?? [])).flat();
}

/** As far as the record has both, the answers are yes and no by turns. */
function mixed(drills: readonly Drill[]): readonly Drill[] {
  const isYes = ({ exercise }: Drill): boolean => exercise.choices[0]?.isRight === true;
  const [yes, no] = [drills.filter(isYes), drills.filter((drill) => !isYes(drill))];
  return drills.flatMap((_, i) => [yes[i] ?? [], no[i] ?? []].flat()).slice(0, drillsOfCell);
}

/** Seconds between both events, so that a trainee can foresee which comes first. */
const clear = 0.7;
/** Seconds of the run that a drill leaves out, so that the chart shows whole cycles. */
const settled = 25;

/** One for each recharge during which a mold cools. */
export function shotsFull(run: CellRun): readonly Drill[] {
  const recharges = findSpells({ cell: "", of: "screw", state: stateNames.recharging }, run).slice(0, -1);
  const usual = recharges.reduce((sum, { start, end }) => sum + end! - start, 0) / recharges.length;
  return run.spells.flatMap((recharge) => {
    if (recharge.role !== "screw.recharge" || recharge.end === null || recharge.start < settled) return [];
    const open = run.spells.find(({ role, start }) => role === "mold.open" && start > recharge.start);
    const cool = open && coolingBefore(open, run);
    if (open === undefined || open.end === null || cool === undefined || cool.start > recharge.start) return [];
    const lead = open.start - recharge.end;
    // By the usual duration of a recharge, as earlier cycles show it.
    const usualLead = open.start - recharge.start - usual;
    if (lead > 0 !== usualLead > 0 || Math.min(Math.abs(lead), Math.abs(usualLead)) < clear) return [];
    return [drillOf(recharge, recharge.end, open, cool, run)];
  });
}

function coolingBefore(open: Spell, { spells }: CellRun): Spell | undefined {
  return spells.findLast(
    ({ resource, role, start }) => resource === open.resource && role === "mold.cool" && start < open.start,
  );
}

function drillOf(recharge: Spell, full: number, open: Spell, cool: Spell, run: CellRun): Drill {
  const isFull = full < open.start;
  const times = `The shot is full at ${seconds(full)}, and the mold opens at ${seconds(open.start)}.`;
  const look =
    `The screw begins to recharge at ${seconds(recharge.start)}. The mold at station ${open.resource} is the next to open; ` +
    `it has cooled since ${seconds(cool.start)}. Earlier cycles in the chart show how long each step takes.`;
  const chart = {
    title: "The cell up to this moment",
    run,
    from: Math.max(0, recharge.start - 22),
    at: recharge.start,
  };
  const until = Math.max(full, open.start) + 1;
  return {
    look,
    charts: [{ ...chart, until: Math.min(until, run.scenario.run.length) }],
    exercise: {
      ask: `Will the shot be full before the mold at station ${open.resource} opens?`,
      choices: [
        { text: "Yes, the shot is full first.", isRight: isFull, because: times },
        { text: "No, the mold opens first.", isRight: !isFull, because: times },
      ],
    },
  };
}
