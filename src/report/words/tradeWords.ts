// The trade's nouns for steps and resources in sentences.
import { PLASTICATOR, RAM, VALVE } from "#cell/words/cycleNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { subjectNames, type StepRole } from "#cell/words/stepNames.ts";
import type { Study } from "#analysis/study/study.ts";

const nouns: Readonly<Partial<Record<StepRole, string>>> = {
  "screw.recharge": stateNames.recharging,
  "screw.fillBeyond": "filling beyond the shot",
  "screw.extrude": stateNames.extrudingParison,
  "screw.heat": "heating up",
  "screw.purge": stateNames.purging,
  "valve.toPort": "shifting to the port",
  "valve.toHead": "shifting to the head",
  "valve.toNeutral": "shifting to neutral",
  "mold.drop": stateNames.parisonDrop,
  "mold.close": stateNames.closing,
  "mold.blow": stateNames.blowing,
  "mold.cool": stateNames.cooling,
  "mold.vent": stateNames.venting,
  "mold.open": stateNames.opening,
  "mold.remove": stateNames.removal,
};

type NamedStep = Pick<Study["bottleneck"][number]["steps"][number], "step" | "role" | "task">;

/** Other steps keep their names, as those that the user named. */
export function nounOf({ step, role, task }: NamedStep): string {
  if (role === "crew.walk" && task !== undefined) return subjectNames["crew.walk"](task);
  return (role && nouns[role]) ?? step;
}

/** "cooling, left and right"; a server with one step of its own name is named once. */
export function stepOf(step: NamedStep, resources: readonly string[]): string {
  const names = namesOf(resources);
  return names === step.step ? names : `${nounOf(step)}, ${names}`;
}

const owners: Readonly<Record<string, string>> = {
  [PLASTICATOR]: "the screw",
  [VALVE]: "the valve",
  [RAM]: "the ram",
  chambers: "the chambers",
  "die zone": "the die zone",
  crew: "the crew",
  stations: "the stations",
  masks: "the masks",
};

/** A station goes by its own name. */
export function ownerName(resource: string): string {
  return owners[resource] ?? resource;
}

const mostNames = 3;

/** "left and right"; above three names only their number. */
export function namesOf(resources: readonly string[], kind = "stations"): string {
  if (resources.length > mostNames) return `all ${resources.length} ${kind}`;
  const last = ownerName(resources.at(-1) ?? "");
  return resources.length < 2 ? last : `${resources.slice(0, -1).map(ownerName).join(", ")} and ${last}`;
}

/** A resource or circuit by the words of the screen: CSV files call the screw `plasticator`. */
export function screenName(name: string): string {
  return name.replace(PLASTICATOR, "screw");
}
