// What lies in a mold and what the air does, from step to step.
import type { EventRecord } from "#cell/records/eventRecord.ts";
import type { StepRole } from "#cell/words/stepNames.ts";
import type { SceneRow } from "./sceneRow.ts";

export type MoldState = Pick<SceneRow, "content" | "isShut" | "air">;

export const emptyMold: MoldState = { content: "nothing", isShut: false, air: "none" };

const during: Readonly<Partial<Record<StepRole, MoldState>>> = {
  "valve.toPort": emptyMold,
  "mold.callMelt": emptyMold,
  "mold.pushRam": emptyMold,
  "mold.travelIn": emptyMold,
  "mold.catch": { content: "parison", isShut: false, air: "none" },
  "mold.drop": { content: "parison", isShut: false, air: "none" },
  "mold.close": { content: "parison", isShut: false, air: "none" },
  "mold.cut": { content: "parison", isShut: true, air: "none" },
  "mold.travelOut": { content: "parison", isShut: true, air: "none" },
  "mold.blow": { content: "parison", isShut: true, air: "blowing" },
  "mold.cool": { content: "part", isShut: true, air: "held" },
  "mold.vent": { content: "part", isShut: true, air: "venting" },
  "mold.open": { content: "part", isShut: false, air: "none" },
  "calendar.off": emptyMold,
  "change.await": emptyMold,
  "change.work": emptyMold,
};

/** Steps with which the parts leave the mold. */
const removals: readonly StepRole[] = ["mold.remove", "part.handOver", "mold.handToMask", "crew.releaseFromRemoval"];

/** `before` is the role of the last row of the same mold. */
export function moldDuring({ role }: EventRecord, last: MoldState, before: StepRole | null): MoldState {
  if (role === null) return last;
  const known = during[role];
  if (known) return known;
  if (role === "mold.own") return ownStep(last, before);
  return role === "mold.clear" ? { ...last, isShut: false, air: "none" } : last;
}

/** A step of the user's own, between two of the cycle. */
function ownStep(last: MoldState, before: StepRole | null): MoldState {
  if (before !== null && removals.includes(before)) return emptyMold;
  if (before === "mold.close") return { ...last, isShut: true };
  if (before === "mold.blow") return { ...last, content: "part", air: "held" };
  return before === "mold.vent" ? { ...last, air: "none" } : last;
}
