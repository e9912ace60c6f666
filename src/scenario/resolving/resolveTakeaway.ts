// From drafts to the servers after the mold, the crew's ways and the regrind, with the checks that look across keys.
import { settled, type Resolution } from "./resolution.ts";
import { faultOfServerName } from "#scenario/values/nameLeaf.ts";
import type { CrewTask, Scenario, ServerSpec } from "#scenario/scenario.ts";
import type { ListedStation } from "./stationList.ts";

type Downstream = Pick<Scenario, "takeaway" | "regrindLimit" | "walk" | "taskOrder">;

export function resolveTakeaway(listed: readonly ListedStation[], resolution: Resolution): Downstream | undefined {
  const { draft } = resolution;
  const servers = Object.entries(draft.takeaway ?? {}).map(([name, server]) => serverOf(name, server));
  checkServers(listed, resolution);
  checkPlaces(listed, resolution);
  checkOrder(
    servers.filter((server) => server !== undefined),
    resolution,
  );
  const walk = settled(draft.crew?.walk);
  const tasks = taskOrder(resolution);
  if (servers.includes(undefined)) return undefined;
  return {
    ...(servers.length === 0 ? {} : { takeaway: servers.filter((server) => server !== undefined) }),
    ...(draft.regrind?.limit === undefined ? {} : { regrindLimit: draft.regrind.limit }),
    ...(walk === undefined ? {} : { walk }),
    ...(tasks === undefined ? {} : { taskOrder: tasks }),
  };
}

type ServerDraft = NonNullable<Resolution["draft"]["takeaway"]>[string];

function serverOf(name: string, draft: ServerDraft): ServerSpec | undefined {
  const { places, buffer, by, rejects = 0, reason, perStation, minAge, maxAge } = draft ?? {};
  const time = settled(draft?.time);
  if (time === undefined || places === undefined || buffer === undefined || by === undefined) return undefined;
  return {
    name,
    time,
    places,
    buffer,
    rejects,
    by,
    ...(reason === undefined ? {} : { reason }),
    ...(perStation === true ? { perStation } : {}),
    ...(minAge === undefined ? {} : { minAge }),
    ...(maxAge === undefined ? {} : { maxAge }),
  };
}

/** Each place is a process of its own in the simulation, and the work on them grows faster than their number. */
const mostPlaces = 2000;

function checkPlaces(listed: readonly ListedStation[], { draft, report }: Resolution): void {
  const all = Object.values(draft.takeaway ?? {}).reduce((sum, server) => {
    return sum + (server?.places ?? 0) * (server?.perStation === true ? listed.length : 1);
  }, 0);
  if (all <= mostPlaces) return;
  report({
    code: "places-too-many",
    message: `The servers have ${all} places in all, more than ${mostPlaces}.`,
    expected: `at most ${mostPlaces} places, those of each station counted`,
    remedy: "Give the servers fewer places, or leave servers out.",
    path: ["takeaway"],
    at: "key",
  });
}

function checkServers(listed: readonly ListedStation[], { draft, has, report }: Resolution): void {
  for (const [name, server] of Object.entries(draft.takeaway ?? {})) {
    const fault = faultOfServerName(name);
    if (fault) report({ ...fault, path: ["takeaway", name], at: "key" });
    if (listed.some((station) => station.name === name)) {
      report({
        code: "server-twice",
        message: `A station is called "${name}" already.`,
        expected: "a name of its own",
        remedy: "Rename one of them.",
        path: ["takeaway", name],
        at: "key",
      });
    }
    const { minAge, maxAge } = server ?? {};
    if (minAge !== undefined && maxAge !== undefined && minAge >= maxAge) {
      report({
        code: "values-contradict",
        message: "No part is ever old enough and young enough: `minAge` is not below `maxAge`.",
        expected: "`minAge` below `maxAge`",
        remedy: "Check both for a slip.",
        path: ["takeaway", name, "minAge"],
      });
    }
    if (server?.by !== "operator" || draft.crew?.operators !== 0) continue;
    report({
      code: "operator-missing",
      message: `An operator is to do ${name}, but there is none.`,
      expected: "`crew: { operators: 1 }` or more",
      remedy: "Add `crew: { operators: 1 }`, or write `by: machine`.",
      path: ["takeaway", name, "by"],
      fate: "cell",
    });
  }
  if (has(["takeaway"]) && draft.delivery?.removal === "pin" && (has(["quality"]) || has(["maxInMold"]))) {
    report({
      code: "mask-takeaway",
      message:
        "Parts that a pin carries away leave for the takeaway all together, so that none can be judged at the mold.",
      expected: "`removal: mold`, or rejects at a server of the takeaway",
      remedy: "Write `removal: mold`, or move the check to `takeaway`.",
      path: ["takeaway"],
      at: "key",
    });
  }
}

/** Parts that may wait before a server with an age limit, those in the servers before it included. */
const mostAging = 500;

/** A station's own servers come before those that all share; where age counts, parts come as they left the mold. */
function checkOrder(servers: readonly ServerSpec[], { report }: Resolution): void {
  servers.forEach((server, k) => {
    const before = servers.slice(0, k);
    const path = ["takeaway", server.name];
    if (server.perStation === true && before.some((other) => other.perStation !== true)) {
      report({
        code: "server-order",
        message: "A server of each station's own comes after one that all stations share.",
        expected: "servers with `perStation: yes` first",
        remedy: "List it earlier, or delete `perStation`.",
        path: [...path, "perStation"],
      });
    }
    if (server.minAge === undefined && server.maxAge === undefined) return;
    const room = [...before, server].reduce((sum, each) => sum + each.buffer + each.places, 0);
    if (before.every(keepsOrder) && (server.perStation === true || before.every((each) => each.perStation !== true))) {
      if (room <= mostAging) return;
      report({
        code: "out-of-range",
        message: `Up to ${room} parts may be waiting for their age.`,
        expected: `at most ${mostAging} places up to here`,
        remedy: "Make the buffers smaller.",
        path: [...path, "buffer"],
      });
      return;
    }
    report({
      code: "server-order",
      message: "The age of parts counts here, but a server before it may change their order or refuse some.",
      expected: "before it only servers with one place or a fixed time, without rejects, and shared alike",
      remedy: "List it earlier.",
      path,
      at: "key",
    });
  });
}

function keepsOrder({ places, time, rejects, by, maxAge }: ServerSpec): boolean {
  const isSteady = places === 1 || (time.kind === "fixed" && by === "machine");
  return isSteady && rejects === 0 && maxAge === undefined;
}

const usualOrder: readonly CrewTask[] = ["removal", "clearing", "repair", "packing"];

function taskOrder({ draft, report }: Resolution): readonly CrewTask[] | undefined {
  const written = draft.crew?.priorities;
  // Where an operator packs, tasks get priorities.
  const packs = Object.values(draft.takeaway ?? {}).some((server) => server?.by === "operator");
  if (written === undefined) return packs ? usualOrder : undefined;
  const tasks = written.filter((task) => task !== undefined);
  for (const [index, task] of tasks.entries()) {
    if (tasks.indexOf(task) === index) continue;
    report({
      code: "task-twice",
      message: `The task "${task}" is named twice.`,
      expected: "each task once",
      remedy: "Keep one of them.",
      path: ["crew", "priorities", index],
    });
  }
  return tasks;
}
