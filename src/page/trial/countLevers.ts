// The levers for the number of molds and of operators.
import { isMapping } from "#scenario/values/key.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { stationGroups } from "#analysis/changes/stationGroups.ts";
import type { Lever, LeverPosition } from "./lever.ts";

/** The reader takes no more. */
const mostStations = 16;
const moreMolds = 4;
const [fewerOperators, moreOperators] = [2, 4];

/** One for identical molds; one for each entry of the list where molds differ. */
export function moldLevers(content: unknown, { stations }: Scenario): readonly Lever[] {
  const listed = isMapping(content) ? content["stations"] : undefined;
  const isAlike = stationGroups(stations).length === 1;
  const total = stations.length;
  const most = Math.min(mostStations, total + moreMolds);
  if (!Array.isArray(listed) || listed.length === 1) {
    return [moldLever("stations.count", "number of molds", total, 1, most, (n) => [`stations.count=${n}`])];
  }
  const entries = (listed as readonly unknown[]).map((entry, i) => ({
    path: entryPath(entry, i),
    name: entryName(entry, i),
    count: isMapping(entry) && typeof entry["count"] === "number" ? entry["count"] : 1,
  }));
  if (!isAlike)
    return entries.map(({ path, name, count }) =>
      moldLever(`${path}.count`, `number of molds, ${name}`, count, 1, count + most - total, (n) => [
        `${path}.count=${n}`,
      ]),
    );
  if (entries.some(({ count }) => count > 1)) return [];
  const [first] = entries;
  return [
    moldLever("stations.count", "number of molds", total, 1, most, (n) =>
      n > total
        ? [`${first!.path}.count=${n - total + 1}`]
        : // From the last to the first, so that numbers in brackets stay valid.
          entries
            .slice(n)
            .toReversed()
            .map(({ path }) => `${path}=null`),
    ),
  ];
}

/** None where no operator is needed. */
export function operatorLevers({ operators, calendar }: Scenario, content: unknown): readonly Lever[] {
  if (operators === 0) return [];
  const shifts = shiftsWithOperators(content) && calendar !== undefined;
  const least = Math.max(1, operators - fewerOperators);
  const settingsFor = (n: number): readonly string[] => [
    `crew.operators=${n}`,
    ...(shifts ? [`calendar.shifts.*.operators=${n > operators ? "+" : ""}${n - operators}`] : []),
  ];
  const lever = countLever("crew.operators", "number of operators", [least, operators, operators + moreOperators]);
  return [lever(settingsFor)];
}

function shiftsWithOperators(content: unknown): boolean {
  const calendar = isMapping(content) ? content["calendar"] : undefined;
  const shifts = isMapping(calendar) ? calendar["shifts"] : undefined;
  return Array.isArray(shifts) && shifts.some((shift) => isMapping(shift) && shift["operators"] !== undefined);
}

function moldLever(
  id: string,
  name: string,
  value: number,
  least: number,
  most: number,
  settingsFor: (n: number) => readonly string[],
): Lever {
  return { ...countLever(id, name, [least, value, most])(settingsFor), isLast: true };
}

const countLever =
  (id: string, name: string, [least, value, most]: readonly [number, number, number]) =>
  (settingsFor: (n: number) => readonly string[]): Lever => ({
    id,
    name,
    written: String(value),
    isLast: false,
    positions: Array.from({ length: most - least + 1 }, (_, i): LeverPosition => {
      const n = least + i;
      return { words: String(n), settings: n === value ? [] : settingsFor(n) };
    }),
    present: value - least,
  });

function entryName(entry: unknown, i: number): string {
  const name = isMapping(entry) ? entry["name"] : undefined;
  return typeof name === "string" ? name : `station ${i + 1}`;
}

function entryPath(entry: unknown, i: number): string {
  const name = isMapping(entry) ? entry["name"] : undefined;
  return typeof name === "string" ? `stations.${name}` : `stations[${i}]`;
}
