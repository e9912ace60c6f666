// What becomes of a step under way when something that it needs stops: the matrix of steps and rules, as data.
import type { StopEffect, StopRule } from "#engine/compiler/stepTable.ts";
import { hasRole, lastWith, type CellStep } from "#cell/words/cellTable.ts";
import { stepNames } from "#cell/words/stepNames.ts";

/** Where the shot is while the step is under way. */
export type ShotPlace = "not yet delivered" | "being delivered" | "hanging" | "in the mold" | "removed" | "physics";

/** `lost`: the shot goes to regrind and the mold is cleared. */
export type StepFate = Exclude<StopEffect, { readonly leaveFor: string }> | "lost";

/** Blowing, cooling and venting never pause; a hanging parison cannot be held. */
export const stopMatrix: Readonly<Record<ShotPlace, Readonly<Record<StopRule, StepFate>>>> = {
  "not yet delivered": { finish: "run on", hold: "hold", scrap: "hold" },
  "being delivered": { finish: "run on", hold: "lost", scrap: "lost" },
  hanging: { finish: "run on", hold: "lost", scrap: "lost" },
  physics: { finish: "run on", hold: "run on", scrap: "run on" },
  "in the mold": { finish: "run on", hold: "hold", scrap: "lost" },
  removed: { finish: "run on", hold: "hold", scrap: "hold" },
};

/** The steps of each place, and what becomes of the neighbors when such a step is held or loses its shot. */
export const stopWords: Readonly<Record<ShotPlace, { readonly steps: string; readonly neighbors: string }>> = {
  "not yet delivered": {
    steps: "recharge, both shifts of the valve, steps before the drop",
    neighbors:
      "stations that need the screw, the valve or the turn wait; molds under way go on; the valve closes although the screw is stopped",
  },
  "being delivered": {
    steps: stepNames["mold.drop"],
    neighbors:
      "the shot goes to regrind, the valve shifts back at once and the screw recharges; the mold is cleared, by an operator if so said",
  },
  hanging: {
    steps: "close, and steps of your own between drop and close",
    neighbors: "the shot goes to regrind, the mold is cleared; screw, valve and the other molds go on",
  },
  physics: {
    steps: "blow, cool, vent",
    neighbors: "nothing pauses and everything goes on; only the next motion waits for the end of the stop",
  },
  "in the mold": {
    steps: "open, remove, steps of your own between close and removal",
    neighbors:
      "held: the part stays, but an operator finishes a task; lost: the mold is cleared; screw, valve and the other molds go on",
  },
  removed: {
    steps: "steps of your own after the removal",
    neighbors: "the shot waits for another station that is ready",
  },
};

/** `cycle` are a station's steps in their order. */
export function shotPlaceAt(at: number, cycle: readonly Pick<CellStep, "role">[]): ShotPlace {
  if (hasRole(cycle[at]!, "mold.blow", "mold.cool", "mold.vent")) return "physics";
  // In continuous extrusion nothing drops: a mold catches the parison, and has it for good once it is cut.
  const delivered = lastWith(cycle, "mold.drop", "mold.catch");
  if (at < delivered) return "not yet delivered";
  if (at === delivered) return "being delivered";
  if (at <= lastWith(cycle, "mold.close", "mold.cut")) return "hanging";
  return at <= lastWith(cycle, "mold.open", "mold.remove") ? "in the mold" : "removed";
}
