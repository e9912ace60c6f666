// Step tables that use every feature of the table language: kinds of melt delivery, stops, a break, a takeaway, a clock.
import type { PlaceSpec, ProcessSpec, StateSpec, StepTable, StopRule } from "#engine/compiler/stepTable.ts";
import { ticks } from "./runTable.ts";

const working = (name: string): StateSpec => ({ name, kind: "working" });
const waiting = (name: string): StateSpec => ({ name, kind: "waiting" });
const stopped: StateSpec = { name: "stopped", kind: "stopped" };
const family = (name: string, count: number, tokens: number): PlaceSpec[] =>
  Array.from({ length: count }, (_, k) => ({ name: `${name} ${k + 1}`, tokens }));
const stationNames = (count: number): string[] => Array.from({ length: count }, (_, k) => `station ${k + 1}`);

/** Ticks: recharge r, drop d, valve shift v, mold m; and the number of equal stations. */
export interface CellTimes {
  readonly r: number;
  readonly d: number;
  readonly v: number;
  readonly m: number;
  readonly stations: number;
}

/** A head with a chamber of one shot for each station: the extruder fills the heads in rotation and shifts right after a fill. */
export function accumulatorHeads({ r, d, v, m, stations }: CellTimes): StepTable {
  return {
    resources: [
      { name: "extruder", states: [waiting("all heads full"), working("valve shifting"), working("filling")] },
      ...stationNames(stations).map((name) => ({
        name,
        states: [waiting("awaiting melt"), working("parison drop"), working("molding")],
      })),
    ],
    places: [
      { name: "heads in rotation", tokens: stations, cargo: "numbered" },
      ...family("empty chamber", stations, 1),
      ...family("full chamber", stations, 0),
    ],
    processes: [
      {
        name: "extruder",
        resource: "extruder",
        steps: [
          {
            name: "shift to head",
            needs: [{ place: "heads in rotation", takes: "cargo" }],
            shows: [{ resource: "extruder", state: "valve shifting" }],
            time: ticks(v),
          },
          {
            name: "fill",
            needs: [{ place: "empty chamber 1", by: "cargo", meanwhile: "all heads full" }],
            shows: [{ resource: "extruder", state: "filling" }],
            time: ticks(r),
            gives: [{ place: "full chamber 1", by: "cargo" }, { place: "heads in rotation" }],
          },
        ],
      },
      ...stationNames(stations).map((name, k): ProcessSpec => ({
        name,
        resource: name,
        steps: [
          {
            name: "drop",
            needs: [{ place: `full chamber ${k + 1}`, meanwhile: "awaiting melt" }],
            shows: [{ resource: name, state: "parison drop" }],
            time: ticks(d),
            gives: [{ place: `empty chamber ${k + 1}` }],
            counts: { shots: 1 },
          },
          { name: "mold", shows: [{ resource: name, state: "molding" }], time: ticks(m) },
        ],
      })),
    ],
  };
}

/** One chamber before the valve: it takes `ahead` ticks of the next shot before it is full, the rest after the drop has begun. */
export function commonAccumulator({ r, d, v, m, stations, ahead }: CellTimes & { readonly ahead: number }): StepTable {
  return {
    resources: [
      { name: "extruder", states: [working("filling"), waiting("chamber full")] },
      { name: "valve", states: [waiting("neutral"), working("shifting")] },
      ...stationNames(stations).map((name) => ({
        name,
        states: [
          waiting("awaiting melt"),
          working("valve shifting to it"),
          working("parison drop"),
          working("molding"),
        ],
      })),
    ],
    places: [
      { name: "full shot", tokens: 0 },
      { name: "valve", tokens: 1 },
      { name: "valve to be shifted back", tokens: 0 },
      { name: "drop begun", tokens: 0 },
    ],
    processes: [
      {
        name: "extruder",
        resource: "extruder",
        steps: [
          { name: "fill at first", time: ticks(r), gives: [{ place: "full shot" }] },
          { name: "fill ahead", shows: [{ resource: "extruder", state: "filling" }], time: ticks(ahead) },
          {
            name: "fill the rest",
            needs: [{ place: "drop begun", meanwhile: "chamber full" }],
            shows: [{ resource: "extruder", state: "filling" }],
            time: ticks(r - ahead),
            gives: [{ place: "full shot" }],
            next: "fill ahead",
          },
        ],
      },
      {
        name: "valve",
        resource: "valve",
        steps: [
          {
            name: "shift to neutral",
            needs: [{ place: "valve to be shifted back", meanwhile: "neutral" }],
            shows: [{ resource: "valve", state: "shifting" }],
            time: ticks(v),
            gives: [{ place: "valve" }],
          },
        ],
      },
      ...stationNames(stations).map((name): ProcessSpec => ({
        name,
        resource: name,
        steps: [
          {
            name: "shift to port",
            needs: [
              { place: "full shot", meanwhile: "awaiting melt" },
              { place: "valve", meanwhile: "awaiting melt" },
            ],
            shows: [{ resource: name, state: "valve shifting to it" }],
            time: ticks(v),
            gives: [{ place: "drop begun" }],
          },
          {
            name: "drop",
            shows: [{ resource: name, state: "parison drop" }],
            time: ticks(d),
            gives: [{ place: "valve to be shifted back" }],
            counts: { shots: 1 },
          },
          { name: "mold", shows: [{ resource: name, state: "molding" }], time: ticks(m) },
        ],
      })),
    ],
  };
}

/** Ticks: parison P from cut to cut, travel in i, close k, cut u, travel out o, the rest of the mold's cycle b. */
export interface ContinuousTimes {
  readonly P: number;
  readonly i: number;
  readonly k: number;
  readonly u: number;
  readonly o: number;
  readonly b: number;
  readonly stations: number;
}

/** Continuous extrusion: full length is due at the cut, so a mold may close k + u earlier. A late mold makes a longer tail. */
export function continuousExtrusion({ P, i, k, u, o, b, stations }: ContinuousTimes): StepTable {
  return {
    resources: [
      { name: "screw", states: [working("extruding a parison"), waiting("extruding to regrind")] },
      ...stationNames(stations).map((name) => ({
        name,
        states: [
          waiting("awaiting die zone"),
          waiting("awaiting melt"),
          ...["travel in", "closing", "cutting", "travel out", "molding"].map(working),
        ],
      })),
    ],
    places: [
      { name: "die zone", tokens: 1 },
      { name: "cut", tokens: 1 },
      { name: "parison due", tokens: 0 },
    ],
    processes: [
      {
        name: "screw",
        resource: "screw",
        steps: [
          {
            name: "grow until a mold may close",
            needs: [{ place: "cut" }],
            shows: [{ resource: "screw", state: "extruding a parison" }],
            time: ticks(P - k - u),
            gives: [{ place: "parison due" }],
          },
          { name: "grow to full length", time: ticks(k + u) },
          { name: "grow a tail", shows: [{ resource: "screw", state: "extruding to regrind" }] },
        ],
      },
      ...stationNames(stations).map((name): ProcessSpec => ({
        name,
        resource: name,
        steps: [
          {
            name: "travel in",
            needs: [{ place: "die zone", meanwhile: "awaiting die zone" }],
            shows: [{ resource: name, state: "travel in" }],
            time: ticks(i),
          },
          {
            name: "close",
            needs: [{ place: "parison due", meanwhile: "awaiting melt" }],
            shows: [{ resource: name, state: "closing" }],
            time: ticks(k),
          },
          {
            name: "cut",
            shows: [{ resource: name, state: "cutting" }],
            time: ticks(u),
            gives: [{ place: "cut" }],
            counts: { shots: 1 },
          },
          {
            name: "travel out",
            shows: [{ resource: name, state: "travel out" }],
            time: ticks(o),
            gives: [{ place: "die zone" }],
          },
          { name: "mold", shows: [{ resource: name, state: "molding" }], time: ticks(b) },
        ],
      })),
    ],
  };
}

/**
 * One station of a reciprocating screw, stopped once: shift 1, drop 2, close 2, cool 6, open 2, recharge 12, clearing 3.
 * A drop and a close before pinch cannot be held: their shot is lost.
 */
export function stoppedStation(at: number, repair: number, rule: StopRule): StepTable {
  const lost = { leaveFor: "give up the shot" };
  return {
    resources: [
      {
        name: "screw",
        states: [waiting("holding a full shot"), ...["recharging", "delivering", "valve shifting"].map(working)],
      },
      {
        name: "station",
        states: [
          waiting("awaiting melt"),
          ...["valve shifting to it", "parison drop", "closing", "cooling", "opening", "being cleared"].map(working),
          stopped,
        ],
        whenStopped: "stopped",
      },
      { name: "operator", states: [waiting("free"), working("clearing")] },
    ],
    places: [
      { name: "operators", tokens: 1 },
      { name: "full shot", tokens: 1 },
      { name: "neutral", tokens: 1 },
      { name: "valve to be shifted back", tokens: 0 },
      { name: "recharge due", tokens: 0 },
      { name: "never", tokens: 0 },
    ],
    processes: [
      {
        name: "screw",
        resource: "screw",
        steps: [
          {
            name: "recharge",
            needs: [{ place: "recharge due" }],
            shows: [{ resource: "screw", state: "recharging" }],
            time: ticks(12),
            gives: [{ place: "full shot" }],
          },
          { name: "hold", shows: [{ resource: "screw", state: "holding a full shot" }] },
        ],
      },
      {
        name: "valve",
        resource: "screw",
        steps: [
          {
            name: "shift to neutral",
            needs: [{ place: "valve to be shifted back" }],
            shows: [{ resource: "screw", state: "valve shifting" }],
            time: ticks(1),
            gives: [{ place: "neutral" }, { place: "recharge due" }],
          },
        ],
      },
      {
        name: "station",
        resource: "station",
        steps: [
          {
            name: "shift to port",
            needs: [{ place: "full shot", meanwhile: "awaiting melt" }, { place: "neutral" }],
            shows: [
              { resource: "station", state: "valve shifting to it" },
              { resource: "screw", state: "valve shifting" },
            ],
            time: ticks(1),
          },
          {
            name: "drop",
            shows: [
              { resource: "station", state: "parison drop" },
              { resource: "screw", state: "delivering" },
            ],
            time: ticks(2),
            gives: [{ place: "valve to be shifted back" }],
            stopped: {
              finish: "run on",
              hold: { leaveFor: "give up the drop" },
              scrap: { leaveFor: "give up the drop" },
            },
          },
          {
            name: "close",
            shows: [{ resource: "station", state: "closing" }],
            time: ticks(2),
            stopped: { finish: "run on", hold: lost, scrap: lost },
          },
          { name: "cool", shows: [{ resource: "station", state: "cooling" }], time: ticks(6), stopped: "physics" },
          {
            name: "open",
            shows: [{ resource: "station", state: "opening" }],
            time: ticks(2),
            stopped: { finish: "run on", hold: "hold", scrap: lost },
            counts: { parts: 1 },
            next: "shift to port",
          },
          { name: "give up the drop", gives: [{ place: "valve to be shifted back" }] },
          { name: "give up the shot", counts: { "shots to regrind": 1 } },
          {
            name: "clear",
            needs: [{ place: "operators" }],
            shows: [
              { resource: "station", state: "being cleared" },
              { resource: "operator", state: "clearing" },
            ],
            time: ticks(3),
          },
          { name: "let go", shows: [{ resource: "operator", state: "free" }], gives: [{ place: "operators" }] },
        ],
      },
      {
        name: "stop",
        resource: "station",
        steps: [
          { name: "until the stop", time: ticks(at) },
          { name: "stop", stops: { resource: "station", rule } },
          { name: "repair", time: ticks(repair), releases: "station" },
          { name: "never again", needs: [{ place: "never" }] },
        ],
      },
    ],
  };
}

/** One operator whose break begins while the mold cools; the break takes the operator's token with a higher priority. */
export function breakWhileCooling(): StepTable {
  return {
    resources: [
      {
        name: "station",
        states: [waiting("awaiting removal"), working("parison drop"), working("cooling"), working("removal")],
      },
      { name: "operator 1", states: [waiting("free"), working("removing"), { name: "on break", kind: "off" }] },
    ],
    places: [
      { name: "operators", tokens: 1, cargo: "numbered", rule: "priority" },
      { name: "never", tokens: 0 },
    ],
    processes: [
      {
        name: "break",
        resource: "operator 1",
        priority: 0,
        steps: [
          { name: "until the break", time: ticks(7) },
          {
            name: "break",
            needs: [{ place: "operators", takes: "helper" }],
            shows: [{ resource: "operator 1", by: "helper", state: "on break" }],
            time: ticks(6),
          },
          {
            name: "come back",
            shows: [{ resource: "operator 1", by: "helper", state: "free" }],
            gives: [{ place: "operators", carries: "helper" }],
          },
          { name: "no other break", needs: [{ place: "never" }] },
        ],
      },
      {
        name: "station",
        resource: "station",
        priority: 1,
        steps: [
          { name: "drop", shows: [{ resource: "station", state: "parison drop" }], time: ticks(2) },
          { name: "cool", shows: [{ resource: "station", state: "cooling" }], time: ticks(8), stopped: "physics" },
          {
            name: "remove",
            needs: [{ place: "operators", meanwhile: "awaiting removal", takes: "helper" }],
            shows: [
              { resource: "station", state: "removal" },
              { resource: "operator 1", by: "helper", state: "removing" },
            ],
            time: ticks(1),
          },
          {
            name: "let go",
            shows: [{ resource: "operator 1", by: "helper", state: "free" }],
            gives: [{ place: "operators", carries: "helper" }],
          },
        ],
      },
    ],
  };
}

/** A takeaway that is slower than the mold and has room for one part: the mold keeps its part until there is room. */
export function takeawayWithRoomForOne(): StepTable {
  return {
    resources: [
      { name: "station", states: [working("molding"), waiting("awaiting takeaway")] },
      { name: "conveyor", states: [waiting("starved"), working("working")] },
    ],
    places: [
      { name: "room", tokens: 1 },
      { name: "part", tokens: 0 },
    ],
    processes: [
      {
        name: "station",
        resource: "station",
        steps: [
          { name: "mold", shows: [{ resource: "station", state: "molding" }], time: ticks(4) },
          {
            name: "hand over",
            needs: [{ place: "room", meanwhile: "awaiting takeaway" }],
            gives: [{ place: "part" }],
            counts: { parts: 1 },
          },
        ],
      },
      {
        name: "conveyor",
        resource: "conveyor",
        steps: [
          {
            name: "carry",
            needs: [{ place: "part", meanwhile: "starved" }],
            shows: [{ resource: "conveyor", state: "working" }],
            time: ticks(9),
            gives: [{ place: "room" }],
          },
        ],
      },
    ],
  };
}

/** A station that is fed every 10 ticks, works for 3 ticks and fails after 5 ticks of work; the repair takes 2 ticks. */
export function clockOnWorkingTime(): StepTable {
  return {
    resources: [
      { name: "station", states: [waiting("starved"), working("working"), stopped], whenStopped: "stopped" },
      { name: "feeder", states: [working("feeding")] },
    ],
    places: [{ name: "fed", tokens: 1 }],
    processes: [
      { name: "feeder", resource: "feeder", steps: [{ name: "feed", time: ticks(10), gives: [{ place: "fed" }] }] },
      {
        name: "station",
        resource: "station",
        steps: [
          {
            name: "work",
            needs: [{ place: "fed", meanwhile: "starved" }],
            shows: [{ resource: "station", state: "working" }],
            time: ticks(3),
            stopped: { hold: "hold" },
          },
        ],
      },
      {
        name: "failure",
        resource: "station",
        steps: [
          { name: "time to failure", time: ticks(5, { whileWorking: "station" }) },
          { name: "fail", stops: { resource: "station", rule: "hold" } },
          { name: "repair", time: ticks(2), releases: "station" },
        ],
      },
    ],
  };
}
