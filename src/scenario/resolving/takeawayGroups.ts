// The servers of the takeaway: their stations, the names of their places, and the server of a name.
import type { Scenario, ServerSpec } from "#scenario/scenario.ts";

/** A server as tables name it: one for all stations, or one of a station's own. */
export interface ServerGroup {
  readonly name: string;
  readonly server: ServerSpec;
  /** The station of a server that takes the parts of one station; null for a server of all stations. */
  readonly station: string | null;
  /** One resource a place. */
  readonly places: readonly string[];
}

interface Followed extends Pick<Scenario, "takeaway"> {
  readonly stations: readonly { readonly name: string }[];
}

/** In the order in which a part meets them. */
export function takeawayGroups({ takeaway = [], stations }: Followed): readonly ServerGroup[] {
  return takeaway.flatMap((server) => {
    if (server.perStation !== true) return [groupOf(server, null)];
    return stations.map(({ name }) => groupOf(server, name));
  });
}

function groupOf(server: ServerSpec, station: string | null): ServerGroup {
  const name = station === null ? server.name : `${server.name} of ${station}`;
  const places = server.places === 1 ? [name] : Array.from({ length: server.places }, (_, i) => `${name} ${i + 1}`);
  return { name, server, station, places };
}

/** The server that a part of this station meets after the given one, or first of all. */
export function nextGroup(
  groups: readonly ServerGroup[],
  station: string | null,
  after?: ServerGroup,
): ServerGroup | undefined {
  const from = after === undefined ? 0 : groups.findIndex(({ name }) => name === after.name) + 1;
  return groups
    .slice(from)
    .find((group) => group.server !== after?.server && (group.station === null || group.station === station));
}

/** The server that a resource or process belongs to, be it one of its places; undefined for all else. */
export function serverOf(name: string, scenario: Followed): string | undefined {
  const groups = takeawayGroups(scenario);
  return groups.find((group) => group.name === name || group.places.includes(name))?.name;
}
