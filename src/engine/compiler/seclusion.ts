// Which steps nobody else sees or touches: several of them in a row may be done in one go, ahead of the clock.
import { NO_REGISTER, RUNS_ON } from "#core/border/numbers.ts";
import type { Row, Show } from "./row.ts";
import { familyOf } from "./takers.ts";
import type { StepTable } from "./stepTable.ts";

/**
 * Of each row: 1 where it is over without anybody else's notice and the next one starts in the same way.
 *
 * Such a step gives nothing, counts nothing and chooses nothing; the next one needs nothing and shows only what no other process
 * shows; and no stop acts on either. So nobody can tell, nor change, at which moment of the run they are worked out.
 */
export function secludedPassages(rows: readonly Row[], table: StepTable): Uint8Array {
  const seers = table.resources.map(() => new Set<number>());
  for (const row of rows) {
    for (const show of row.shows) for (const resource of shownBy(show, table)) seers[resource]!.add(row.process);
    const own = table.resources.findIndex(({ name }) => name === table.processes[row.process]!.resource);
    if (row.needs.some(({ meanwhile, othersTurn }) => meanwhile !== -1 || othersTurn !== -1))
      seers[own]!.add(row.process);
  }
  const startsUnseen = (row: Row): boolean =>
    row.needs.length + row.gates.length === 0 &&
    isBareTime(row) &&
    row.shows.length === 1 &&
    row.shows[0]!.by === NO_REGISTER &&
    row.shows[0]!.states.length === 1 &&
    seers[row.shows[0]!.resource]!.size === 1;
  return Uint8Array.from(rows, (row, number) => {
    const next = rows[number + 1];
    const leadsOn = next !== undefined && row.next === number + 1 && haveSameStops(row, next);
    return leadsOn && endsUnseen(row) && startsUnseen(next) ? 1 : 0;
  });
}

/** What stops do to the one they do to the other. */
function haveSameStops(row: Row, next: Row): boolean {
  const isSame =
    row.occupies.length === next.occupies.length && row.occupies.every((each) => next.occupies.includes(each));
  return isSame && row.isPhysics === next.isPhysics;
}

function endsUnseen(row: Row): boolean {
  const { gives, counters, releases, scale, chance } = row;
  return isBareTime(row) && gives.length + counters.length === 0 && releases === -1 && !scale && chance === 0;
}

/** Time that passes whatever others do. */
function isBareTime({ draw, isClock, stops, occupies, isPhysics, stopEffect }: Row): boolean {
  if (!draw || draw.clock !== -1 || draw.until !== -1 || isClock || stops !== -1) return false;
  return occupies.length === 0 || (isPhysics && stopEffect.every((effect) => effect === RUNS_ON));
}

function shownBy({ resource, by }: Show, table: StepTable): readonly number[] {
  return by === NO_REGISTER ? [resource] : familyOf(resource, table.resources);
}
