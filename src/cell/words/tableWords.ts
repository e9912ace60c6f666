// The few words in which every part of the cycle table is written: states, distributions of time, and the ranks of what binds a start.
import type { openTo, StateName } from "./stateNames.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { ServingRule, StateSpec, DrawnTime } from "#engine/compiler/stepTable.ts";
import type { DispatchRule, ExtraStepSpec, TimeOrRate } from "#scenario/scenario.ts";

/** Which completion binds a start when several are latest at once: plasticator, valve, crew, the own step, then the others. */
export const rank = { plasticator: 0, valve: 1, crew: 2, station: 4 } as const;

export const servingRule: Readonly<Record<DispatchRule, ServingRule>> = {
  "first-ready": "first-come",
  "longest-since-drop": "longest-since-served",
  alternate: "rotation",
  priority: "priority",
};

export const working = (name: StateName | ReturnType<typeof openTo>): StateSpec => ({ name, kind: "working" });
export const waiting = (name: StateName): StateSpec => ({ name, kind: "waiting" });
export const settingUp = (name: StateName): StateSpec => ({ name, kind: "set-up" });
/** An extra step of the user's gives its name to a state. */
export const ownState = ({ name }: ExtraStepSpec): StateSpec => ({ name, kind: "working" });
export const fixed = (distribution: Distribution): { readonly distributions: readonly DrawnTime[] } => ({
  distributions: [{ distribution }],
});

/** A measured time as it is; a rate as the time that this mass takes at it. */
export function massDistribution(measured: TimeOrRate, milligrams: number): DrawnTime {
  return measured.by === "time" ? { distribution: measured.time } : { distribution: measured.rate, amount: milligrams };
}
