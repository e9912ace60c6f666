// The findings of several layouts outside the process window, each finding once.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { outsideWindow } from "#analysis/window/stationWindow.ts";
import type { Study } from "#analysis/study/study.ts";
import { shown } from "#report/words/shownValue.ts";
import { spreadWarnings } from "./spreadWords.ts";
import { PRACTICE, rangeWords, unitSaid } from "./windowWords.ts";

type Windowed = Pick<Study, "scenario" | "windows" | "spreads">;

type Outside = ReturnType<typeof outsideWindow>[number];

interface Finding extends Outside {
  readonly layout: string;
}

/** The same quantity beyond the same limit is one finding, with its smallest and its largest value. */
export function mergedWarnings(studies: readonly Windowed[], units: UnitSystem): readonly string[] {
  const names = studies.map(({ scenario }) => scenario.name);
  const groups = grouped(studies.flatMap(findings), ({ quantity, verdict, low, high, isPractice, remedy }) =>
    JSON.stringify([quantity, verdict, low, high, isPractice, remedy]),
  ).map((alike) => ({
    ...alike[0]!,
    text: `${alike[0]!.quantity} ${valueWords(alike, units)}${placeWords(alike, names)}`,
  }));
  const outside = groups.filter(({ isPractice }) => !isPractice).map(({ text, remedy }) => `  ${text}. ${remedy}`);
  const spread = grouped(
    studies.flatMap(({ scenario, spreads }) =>
      spreadWarnings(spreads, units).map((text) => ({ text, layout: scenario.name, stations: [] })),
    ),
    ({ text }) => text,
  ).map((alike) => `  ${alike[0]!.text}${placeWords(alike, names)}`);
  const unusual = groups.filter(({ isPractice }) => isPractice).map(({ text }) => text);
  const beyond = [...outside, ...spread];
  return [
    ...(beyond.length === 0 ? [] : ["Outside the process window:", ...beyond, ""]),
    ...(unusual.length === 0 ? [] : [`Unusual (${PRACTICE}): ${unusual.join("; ")}.`, ""]),
  ];
}

/** Stations are named where the finding is not one of all stations. */
function findings({ scenario, windows }: Windowed): readonly Finding[] {
  return outsideWindow(windows).map((row) => ({
    ...row,
    layout: scenario.name,
    stations: row.stations.length === scenario.stations.length ? [] : row.stations,
  }));
}

function valueWords(alike: readonly Finding[], units: UnitSystem): string {
  const { quantity, unit, verdict, low, high } = alike[0]!;
  const values = alike.map(({ value }) => value);
  const [least, most] = [Math.min(...values), Math.max(...values)].map((value) =>
    shown(value, unitSaid(quantity, unit), units),
  );
  const limit = shown((verdict === "below" ? low : high) ?? 0, unitSaid(quantity, unit), units);
  return `${least === most ? least : rangeWords(least ?? "", most ?? "")}, ${verdict} ${limit}`;
}

const mostPlaces = 3;

/** " (one-station, two-molds left)"; nothing where it is true of all layouts, of few layouts at all stations. */
function placeWords(alike: readonly Pick<Finding, "layout" | "stations">[], all: readonly string[]): string {
  const layouts = new Set(alike.map(({ layout }) => layout));
  const isEverywhere = alike.every(({ stations }) => stations.length === 0) || layouts.size > mostPlaces;
  if (layouts.size === all.length && isEverywhere) return "";
  const places = [...new Set(alike.map(({ layout, stations }) => [layout, ...stations].join(" ")))];
  return places.length > mostPlaces ? ` (${layouts.size} of ${all.length} layouts)` : ` (${places.join(", ")})`;
}

function grouped<Item>(items: readonly Item[], keyOf: (item: Item) => string): readonly (readonly Item[])[] {
  const groups = new Map<string, Item[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return [...groups.values()];
}
