// Which processes may take tokens of a place, and in which lines those processes wait.
import { NO_REGISTER } from "#core/border/numbers.ts";
import type { Need, Row } from "./row.ts";
import type { StepTable } from "./stepTable.ts";

/** Rows that differ in what their process needs: a calendar has thousands that need the same. */
export function differingNeeds(rows: readonly Row[]): readonly Row[] {
  const known = new Map(
    rows.map((row) => [JSON.stringify([row.process, row.needs.map(({ place, by }) => [place, by])]), row]),
  );
  return [...known.values()];
}

/** Processes that take from the place, in their order. */
export function takersOf(rows: readonly Row[], place: number, table: StepTable): readonly number[] {
  return processesWhere(rows, (row) => row.needs.some((need) => mayMean(need, place, table)));
}

/** Places at which processes stand in line for steps that also need this place. */
export function linesFor(rows: readonly Row[], place: number, table: StepTable): readonly number[] {
  const isLine = (line: number): boolean =>
    rows.some(
      ({ needs }) =>
        needs[0] !== undefined && mayMean(needs[0], line, table) && needs.some((need) => mayMean(need, place, table)),
    );
  return [...table.places.keys()].filter(isLine);
}

/** In their order, which is that of the rows. */
export function processesWhere(rows: readonly Row[], holds: (row: Row) => boolean): readonly number[] {
  return [...new Set(rows.filter(holds).map((row) => row.process))];
}

function mayMean(need: Need, place: number, table: StepTable): boolean {
  if (need.by === NO_REGISTER) return need.place === place;
  return familyOf(need.place, table.places).includes(place);
}

/** The family that starts at `first`: `name 1`, `name 2`, … side by side. */
export function familyOf(first: number, members: readonly { readonly name: string }[]): readonly number[] {
  const base = members[first]!.name.replace(/ 1$/, "");
  const family = [first];
  while (members[first + family.length]?.name === `${base} ${family.length + 1}`) family.push(first + family.length);
  return family;
}
