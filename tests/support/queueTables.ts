// Queues and production lines of the textbooks as step tables.
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { PlaceSpec, ProcessSpec, ResourceSpec, StepTable, TimeSpec } from "#engine/compiler/stepTable.ts";

const busy = (name: string): ResourceSpec => ({
  name,
  states: [
    { name: "idle", kind: "waiting" },
    { name: "busy", kind: "working" },
    { name: "stopped", kind: "stopped" },
  ],
  whenStopped: "stopped",
});

const time = (distribution: Distribution, more: Partial<TimeSpec> = {}): TimeSpec => ({
  distributions: [{ distribution }],
  ...more,
});
export const exponential = (mean: number): Distribution => ({ kind: "exponential", mean });
const numbered = (name: string, count: number): string[] => Array.from({ length: count }, (_, i) => `${name} ${i + 1}`);

/** Customers arrive one by one at a line before equal servers. */
export function openQueue(arrival: Distribution, service: Distribution, servers: number): StepTable {
  const names = numbered("server", servers);
  return {
    resources: [busy("source"), ...names.map(busy)],
    places: [{ name: "line", tokens: 0 }],
    processes: [
      {
        name: "source",
        resource: "source",
        steps: [{ name: "arrive", time: time(arrival), gives: [{ place: "line" }], counts: { arrivals: 1 } }],
      },
      ...names.map((name): ProcessSpec => ({
        name,
        resource: name,
        steps: [
          {
            name: "serve",
            needs: [{ place: "line", meanwhile: "idle" }],
            shows: [{ resource: name, state: "busy" }],
            time: time(service),
            counts: { served: 1 },
          },
        ],
      })),
    ],
  };
}

/** Machine repair: each machine runs for a time and then needs one of the operators. */
export function machineRepair(machines: number, operators: number, run: Distribution, repair: Distribution): StepTable {
  const names = numbered("machine", machines);
  return {
    resources: names.map((name): ResourceSpec => ({
      name,
      states: [
        { name: "running", kind: "working" },
        { name: "awaiting an operator", kind: "waiting" },
        { name: "under repair", kind: "stopped" },
      ],
    })),
    places: [{ name: "operators", tokens: operators }],
    processes: names.map((name): ProcessSpec => ({
      name,
      resource: name,
      steps: [
        { name: "run", shows: [{ resource: name, state: "running" }], time: time(run), counts: { failures: 1 } },
        {
          name: "repair",
          needs: [{ place: "operators", meanwhile: "awaiting an operator" }],
          shows: [{ resource: name, state: "under repair" }],
          time: time(repair),
          gives: [{ place: "operators" }],
          counts: { repairs: 1 },
        },
      ],
    })),
  };
}

/** A saturated line: its first station is never starved, its last never blocked. It has `buffer` places between two stations. */
export function saturatedLine(
  stations: number,
  buffer: number,
  work: Distribution,
  stops?: { readonly run: Distribution; readonly repair: Distribution },
): StepTable {
  const names = numbered("station", stations);
  const between = (kind: string, k: number): string => `${kind} ${k + 1}`;
  const gaps = Array.from({ length: stations - 1 }, (_, k) => k);
  return {
    resources: names.map((name): ResourceSpec => ({
      name,
      states: [
        { name: "working", kind: "working" },
        { name: "starved", kind: "waiting" },
        { name: "blocked", kind: "waiting" },
        { name: "stopped", kind: "stopped" },
      ],
      whenStopped: "stopped",
    })),
    places: gaps.flatMap((k): PlaceSpec[] => [
      { name: between("parts after", k), tokens: 0 },
      // Without a buffer a part leaves its station when the next station is empty.
      { name: between("room after", k), tokens: buffer + 1 },
    ]),
    processes: [
      ...names.map((name, k) => lineStation(name, k, stations, work)),
      ...(stops ? names.map((name): ProcessSpec => workingTimeStop(name, stops.run, stops.repair)) : []),
    ],
  };
}

function lineStation(name: string, k: number, stations: number, work: Distribution): ProcessSpec {
  const parts = { place: `parts after ${k}`, meanwhile: "starved" };
  return {
    name,
    resource: name,
    steps: [
      {
        name: "work",
        ...(k > 0 ? { needs: [parts] } : {}),
        shows: [{ resource: name, state: "working" }],
        time: time(work),
        stopped: { hold: "hold" },
      },
      {
        name: "pass on",
        ...(k < stations - 1
          ? {
              needs: [{ place: `room after ${k + 1}`, meanwhile: "blocked" }],
              gives: [{ place: `parts after ${k + 1}` }],
            }
          : { counts: { made: 1 } }),
      },
      { name: "let go", ...(k > 0 ? { gives: [{ place: `room after ${k}` }] } : {}) },
    ],
  };
}

/** A stop of a station that counts working time only; the repair begins at once. */
function workingTimeStop(name: string, run: Distribution, repair: Distribution): ProcessSpec {
  return {
    name: `stop of ${name}`,
    resource: name,
    steps: [
      { name: "time to failure", time: time(run, { whileWorking: name }) },
      { name: "fail", stops: { resource: name, rule: "hold" } },
      { name: "repair", time: time(repair), releases: name },
    ],
  };
}
