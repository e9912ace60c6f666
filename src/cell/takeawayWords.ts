// The names of the places of servers, and the server that a place belongs to.
import type { Scenario, ServerSpec } from "#scenario/scenario.ts";

/** The places of one server by name. */
export function placeNames({ name, places }: ServerSpec): readonly string[] {
  return places === 1 ? [name] : Array.from({ length: places }, (_, i) => `${name} ${i + 1}`);
}

/** The server that a place belongs to; undefined for what is no server's place. */
export function serverOf(name: string, { takeaway = [] }: Scenario): string | undefined {
  return takeaway.find((server) => placeNames(server).includes(name))?.name;
}
