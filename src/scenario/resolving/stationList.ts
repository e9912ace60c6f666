// The stations one by one: `count` spelled out, every one with its name.
import { mostStations } from "#scenario/keys/stationKeys.ts";
import type { Path } from "#scenario/values/finding.ts";
import type { Resolution, StationDraft } from "./resolution.ts";

export interface ListedStation {
  readonly name: string;
  readonly draft: StationDraft;
  /** Of the entry that it came from. */
  readonly path: Path;
  /** Whether it is the first of its entry; findings of an entry are reported once. */
  readonly first: boolean;
}

export function listStations(resolution: Resolution): readonly ListedStation[] {
  let unnamed = 0;
  const stations = entriesOf(resolution).flatMap(({ draft, path }): ListedStation[] => {
    const count = draft.count ?? 1;
    return Array.from({ length: count }, (_, index) => {
      if (draft.name === undefined) unnamed += 1;
      const name = draft.name === undefined ? `station ${unnamed}` : nameOf(draft.name, draft.count, index);
      return { name, draft, path, first: index === 0 };
    });
  });
  checkNames(stations, resolution);
  return stations.slice(0, mostStations);
}

function nameOf(name: string, count: number | undefined, index: number): string {
  return count === undefined ? name : `${name} ${index + 1}`;
}

function entriesOf({ draft }: Resolution): readonly { readonly draft: StationDraft; readonly path: Path }[] {
  const { stations } = draft;
  if (stations === undefined) return [];
  if (!isList(stations)) return [{ draft: stations, path: ["stations"] }];
  return stations.flatMap((entry, index) => (entry === undefined ? [] : [{ draft: entry, path: ["stations", index] }]));
}

function isList(
  stations: NonNullable<Resolution["draft"]["stations"]>,
): stations is readonly (StationDraft | undefined)[] {
  return Array.isArray(stations);
}

function checkNames(stations: readonly ListedStation[], { report }: Resolution): void {
  if (stations.length > mostStations) {
    const message = `The cell has ${stations.length} stations.`;
    report({
      code: "too-many-stations",
      message,
      expected: `at most ${mostStations}`,
      remedy: "Take some out.",
      path: ["stations"],
      at: "key",
    });
  }
  const seen = new Set<string>();
  for (const { name, path } of stations) {
    if (seen.has(name)) {
      const message = `Another station is called "${name}" already.`;
      report({
        code: "station-twice",
        message,
        expected: "a name of its own",
        remedy: "Rename one of them.",
        path: [...path, "name"],
      });
    }
    seen.add(name);
  }
}
