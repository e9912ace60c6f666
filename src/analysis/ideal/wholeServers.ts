// Adds the places of a server together, because tables list a server, not each of its places.
import type { StateKind } from "#cell/words/stateNames.ts";
import type { CellRecord } from "#cell/records/cellRecord.ts";

type Servers = NonNullable<CellRecord["takeaway"]>["servers"];

interface StateShare {
  readonly resource: string;
  readonly state: string;
  readonly kind: StateKind;
  readonly isActive: boolean;
  readonly share: number;
}

interface ActiveShare {
  readonly resource: string;
  readonly sole: number;
  readonly shifting: number;
}

/** A server's share of a state is the mean over its places. */
export function wholeStates(shares: readonly StateShare[], servers?: Servers): readonly StateShare[] {
  return folded(shares, servers, ({ resource, state }) => `${resource}/${state}`).map(({ rows, places }) => ({
    ...rows[0]!,
    share: rows.reduce((sum, { share }) => sum + share, 0) / places,
  }));
}

/** One place at a time has the longest active period; a change from one to another stays within the server. */
export function wholeActive(shares: readonly ActiveShare[], servers?: Servers): readonly ActiveShare[] {
  return folded(shares, servers, ({ resource }) => resource).map(({ rows }) => ({
    resource: rows[0]!.resource,
    sole: rows.reduce((sum, { sole }) => sum + sole, 0),
    shifting: rows.reduce((sum, { shifting }) => sum + shifting, 0),
  }));
}

/** Groups of rows with the same key, each resource under the name of its server, in the order of first occurrence. */
function folded<Row extends { readonly resource: string }>(
  rows: readonly Row[],
  servers: Servers | undefined,
  keyOf: (row: Row) => string,
): readonly { readonly rows: readonly Row[]; readonly places: number }[] {
  const ofPlace = new Map((servers ?? []).flatMap((server) => server.places.map((place) => [place, server] as const)));
  const groups = new Map<string, { rows: Row[]; places: number }>();
  for (const row of rows) {
    const server = ofPlace.get(row.resource);
    const named = server ? { ...row, resource: server.name } : row;
    const group = groups.get(keyOf(named)) ?? { rows: [], places: server?.places.length ?? 1 };
    group.rows.push(named);
    groups.set(keyOf(named), group);
  }
  return [...groups.values()];
}
