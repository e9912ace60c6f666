// From drafts to the servers after the mold, the crew's ways and the regrind, with the checks that look across keys.
import { settled, type Resolution } from "./resolution.ts";
import type { CrewTask, Scenario, ServerSpec } from "./scenario.ts";

type Downstream = Pick<Scenario, "takeaway" | "regrindLimit" | "walk" | "taskOrder">;

export function resolveTakeaway(resolution: Resolution): Downstream | undefined {
  const { draft } = resolution;
  const servers = Object.entries(draft.takeaway ?? {}).map(([name, server]) => serverOf(name, server));
  checkServers(resolution);
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
  const { places, buffer, by, rejects = 0 } = draft ?? {};
  const time = settled(draft?.time);
  if (time === undefined || places === undefined || buffer === undefined || by === undefined) return undefined;
  return { name, time, places, buffer, rejects, by };
}

function checkServers({ draft, has, report }: Resolution): void {
  for (const [name, server] of Object.entries(draft.takeaway ?? {})) {
    if (/[.[\]="]/u.test(name) || name.trim() === "" || reserved.includes(name)) {
      report({
        code: "name-reserved",
        message: `A server cannot be called "${name}".`,
        expected: "a name of its own, such as `leak test`",
        remedy: "Choose another name.",
        path: ["takeaway", name],
        at: "key",
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

const reserved = ["cell", "crew", "plasticator", "ram", "valve", "operators"];

function taskOrder({ draft, report }: Resolution): readonly CrewTask[] | undefined {
  const written = draft.crew?.priorities;
  if (written === undefined) return undefined;
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
