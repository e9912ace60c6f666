// Which resource owns a timed step that keeps several busy: the one that its start waited for.
import { invariant } from "#foundation/invariant.ts";
import type { Activity, Names } from "./names.ts";
import type { Row } from "./row.ts";
import type { StepTable } from "./stepTable.ts";

/**
 * The section OWNED of the core. Such a step gets an activity for each resource that it keeps busy. Of those that also the step before
 * it on the chain kept busy, the owner of that step comes first, then the order of the table; where there is none, the process's own.
 */
export function ownedActivities(table: StepTable, rows: readonly Row[], names: Names): readonly number[] {
  const busy = busyResources(table, rows);
  const shared = [...busy].filter(([, resources]) => resources.length > 1);
  const variants = new Map(shared.map(([activity, owners]) => [activity, variantsOf(activity, owners, names)]));
  const { activities } = names;
  const count = activities.length;
  const keptBusy = activities.map((activity, number): readonly string[] => busy.get(number) ?? [activity.owner]);
  for (const [base, owners] of variants) for (const number of owners.values()) keptBusy[number] = busy.get(base)!;
  const starts = activities.map((_, number) => {
    const place = shared.findIndex(([activity]) => activity === number);
    return place === -1 ? -1 : count + place * count;
  });
  const rowsOfShared = shared.flatMap(([activity, resources]) =>
    activities.map(({ owner }, before) => {
      const handedOver = resources.filter((resource) => keptBusy[before]!.includes(resource));
      const heir = handedOver.includes(owner) ? owner : handedOver[0];
      return heir === undefined ? activity : variants.get(activity)!.get(heir)!;
    }),
  );
  return [...starts, ...rowsOfShared];
}

/** By activity: the process's own resource and those that it shows at work, in the order of the table. */
function busyResources({ resources, processes }: StepTable, rows: readonly Row[]): Map<number, readonly string[]> {
  const isWorking = (name: string, state: string | readonly string[]): boolean => {
    const states = resources.find((resource) => resource.name === name)?.states ?? [];
    return states.some((each) => each.kind === "working" && [state].flat().includes(each.name));
  };
  const found = new Map<number, readonly string[]>();
  processes
    .flatMap((process) => process.steps.map((step) => ({ process, step })))
    .forEach(({ process, step }, row) => {
      const { activity } = rows[row]!;
      if (activity === -1) return;
      const shown = (step.shows ?? []).filter(({ resource, state }) => isWorking(resource, state));
      const busy = [process.resource, ...shown.map(({ resource }) => resource), ...(found.get(activity) ?? [])];
      found.set(
        activity,
        resources.map(({ name }) => name).filter((name) => busy.includes(name)),
      );
    });
  return found;
}

/** By owner; the activity itself is that of the process's own resource. */
function variantsOf(activity: number, owners: readonly string[], names: Names): ReadonlyMap<string, number> {
  const base: Activity | undefined = names.activities[activity];
  invariant(base !== undefined, "an activity has a number", { activity });
  return new Map(owners.map((owner) => [owner, names.activity({ ...base, owner })]));
}
