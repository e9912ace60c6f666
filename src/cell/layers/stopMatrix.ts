// What a stop does to a step under way: the matrix of steps and stop rules, as data.
import type { StopEffect, StopRule } from "#engine/compiler/stepTable.ts";
import { hasRole, lastWith, type CellStep } from "#cell/words/cellTable.ts";
import { stepNames } from "#cell/words/stepNames.ts";

/** Where the shot is while the step is under way. */
export type ShotPlace = "not yet delivered" | "being delivered" | "hanging" | "in the mold" | "removed" | "physics";

/** `lost`: the shot goes to regrind and the mold is cleared. */
export type StepFate = Exclude<StopEffect, { readonly leaveFor: string }> | "lost";

/** Blow, cool and vent never pause. A hanging parison cannot be held. */
export const stopMatrix: Readonly<Record<ShotPlace, Readonly<Record<StopRule, StepFate>>>> = {
  "not yet delivered": { finish: "run on", hold: "hold", scrap: "hold" },
  "being delivered": { finish: "run on", hold: "lost", scrap: "lost" },
  hanging: { finish: "run on", hold: "lost", scrap: "lost" },
  physics: { finish: "run on", hold: "run on", scrap: "run on" },
  "in the mold": { finish: "run on", hold: "hold", scrap: "lost" },
  removed: { finish: "run on", hold: "hold", scrap: "hold" },
};

/** The steps of each place, and what the neighbors do when such a step is held or loses its shot. */
export const stopWords: Readonly<Record<ShotPlace, { readonly steps: string; readonly neighbors: string }>> = {
  "not yet delivered": {
    steps: "recharge, both shifts of the valve, steps before the drop",
    neighbors:
      "stations that need screw, valve or turn wait; molds under way go on; the valve closes even if the screw is stopped",
  },
  "being delivered": {
    steps: stepNames["mold.drop"],
    neighbors:
      "the shot goes to regrind; the valve shifts back and the screw recharges; the machine or an operator clears the mold",
  },
  hanging: {
    steps: "close, and steps of your own between drop and close",
    neighbors: "the shot goes to regrind and the mold is cleared; screw, valve and the other molds go on",
  },
  physics: {
    steps: "blow, cool, vent",
    neighbors: "nothing pauses; only the next motion waits for the end of the stop",
  },
  "in the mold": {
    steps: "open, remove, steps of your own between close and removal",
    neighbors:
      "held: the part stays, and an operator finishes the task; lost: the mold is cleared; all other resources go on",
  },
  removed: {
    steps: "steps of your own after the removal",
    neighbors: "the full shot waits for another station to be ready",
  },
};

/** `cycle` are a station's steps in their order. */
export function shotPlaceAt(at: number, cycle: readonly Pick<CellStep, "role">[]): ShotPlace {
  if (hasRole(cycle[at]!, "mold.blow", "mold.cool", "mold.vent")) return "physics";
  // In continuous extrusion nothing drops: the mold catches the parison and owns it after the cut.
  const delivered = lastWith(cycle, "mold.drop", "mold.catch");
  if (at < delivered) return "not yet delivered";
  if (at === delivered) return "being delivered";
  if (at <= lastWith(cycle, "mold.close", "mold.cut")) return "hanging";
  return at <= lastWith(cycle, "mold.open", "mold.remove") ? "in the mold" : "removed";
}
