// Which steps no other process sees or touches: several of them in a row may be done in one pass, ahead of the clock.
import { BY_DISTRIBUTION, NO_REGISTER, RUNS_ON } from "#core/border/numbers.ts";
import { isPlainShow, type Row, type Show } from "./row.ts";
import { familyOf } from "./takers.ts";
import type { StepTable } from "./stepTable.ts";

/**
 * Of each row: whether it ends without any effect on others and the next one starts in the same way.
 *
 * Such a step gives nothing, counts nothing and chooses nothing; the next one needs nothing and shows only what no other process
 * shows; and no stop acts on either. So no result depends on the moment of the run at which they are computed.
 */
export function secludedPassages(rows: readonly Row[], table: StepTable): readonly boolean[] {
  const showers = showersOf(rows, table);
  const startsUnseen = ({ needs, gates, shows }: Row): boolean =>
    needs.length + gates.length === 0 &&
    shows.length === 1 &&
    isPlainShow(shows[0]!) &&
    showers[shows[0]!.resource]!.size === 1;
  return rows.map((row, number) => {
    const next = rows[number + 1];
    if (next === undefined || row.next !== number + 1 || !haveSameStops(row, next)) return false;
    return isBareTime(row) && hasNoEffect(row) && isBareTime(next) && startsUnseen(next);
  });
}

/** By resource: the processes that show its states. */
function showersOf(rows: readonly Row[], table: StepTable): readonly ReadonlySet<number>[] {
  const showers = table.resources.map(() => new Set<number>());
  for (const { process, shows, needs } of rows) {
    for (const show of shows) for (const resource of shownBy(show, table)) showers[resource]!.add(process);
    const own = table.resources.findIndex(({ name }) => name === table.processes[process]!.resource);
    if (needs.some(({ meanwhile, othersTurn }) => meanwhile !== -1 || othersTurn !== -1)) showers[own]!.add(process);
  }
  return showers;
}

function shownBy({ resource, by }: Show, table: StepTable): readonly number[] {
  return by === NO_REGISTER ? [resource] : familyOf(resource, table.resources);
}

/** A stop has the same effect on both. */
function haveSameStops(row: Row, next: Row): boolean {
  const isSame =
    row.occupies.length === next.occupies.length && row.occupies.every((each) => next.occupies.includes(each));
  return isSame && row.isPhysics === next.isPhysics;
}

function hasNoEffect({ gives, counts, releases, scale, chance }: Row): boolean {
  return gives.length + counts.length === 0 && releases === -1 && !scale && chance === 0;
}

/** Time that passes whatever others do. */
function isBareTime({ draw, isClock, stops, occupies, isPhysics, stopEffect }: Row): boolean {
  if (!draw || draw.clock !== -1 || draw.until !== BY_DISTRIBUTION || isClock || stops !== -1) return false;
  return occupies.length === 0 || (isPhysics && stopEffect.every((effect) => effect === RUNS_ON));
}
