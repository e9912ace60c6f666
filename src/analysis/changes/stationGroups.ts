// Identical stations together, with the paths by which a setting reaches them.
import type { StationSpec } from "#scenario/scenario.ts";

export interface StationGroup {
  /** The end of the name of a change: empty where all stations are identical, else ` at left`. */
  readonly of: string;
  readonly members: readonly StationSpec[];
  /** Each reaches all members, if the reader takes it. */
  readonly paths: readonly (readonly string[])[];
  /** Entries of the text that could have one station more, with the number that they count. */
  readonly entries: readonly { readonly path: string; readonly count: number }[];
}

export function stationGroups(stations: readonly StationSpec[]): readonly StationGroup[] {
  const groups = new Map<string, StationSpec[]>();
  for (const station of stations) {
    const key = JSON.stringify({ ...station, name: "", priority: 0, product: "" });
    groups.set(key, [...(groups.get(key) ?? []), station]);
  }
  const isOne = groups.size === 1;
  return [...groups.values()].map((members) => {
    const names = members.map(({ name }) => name);
    const stems = [...new Set(names.map(stemOf))];
    return {
      of: isOne ? "" : ` at ${names.length > 1 ? `${names.slice(0, -1).join(", ")} and ` : ""}${names.at(-1)}`,
      members,
      paths: [
        ...(isOne ? [["stations.*"]] : []),
        names.map((name) => `stations.${name}`),
        stems.map((stem) => `stations.${stem}`),
        names.map((name) => `stations[${placeOf(name)}]`),
      ],
      entries: [
        ...stems.map((stem) => ({
          path: `stations.${stem}`,
          count: names.filter((name) => stemOf(name) === stem).length,
        })),
        ...names.map((name) => ({ path: `stations[${placeOf(name)}]`, count: 1 })),
      ],
    };
  });
}

/** `side 2` is one of the stations that the entry `side` counts. */
function stemOf(name: string): string {
  return name.replace(/ \d+$/u, "");
}

/** Stations without names are called `station 1` and so on. */
function placeOf(name: string): number {
  return Number(/ (\d+)$/u.exec(name)?.[1] ?? 1) - 1;
}
