// Every cell of the stop matrix, for the stopped resource and its neighbors, against timelines calculated by hand.
import { describe, expect, it } from "vitest";
import { shotPlaceAt, stopMatrix } from "#cell/layers/stopMatrix.ts";
import type { StepRole } from "#cell/words/stepNames.ts";
import { changesOf, stoppedCell } from "../../support/calendarStop.ts";

/*
 * Seconds, one station, no stop: shift to port 0-1, drop 1-3, close 3-4, blow 4-5, cool 5-11, vent 11-12, open 12-13, removal
 * 13-14; shift to neutral 3-4, recharge 4-8. The stop lasts 20 s, clearing 3 s. The timelines follow by hand from the rules of
 * the model [C].
 */
const undisturbed = [
  "0 valve shifting to it",
  "1 parison drop",
  "3 closing",
  "4 blowing",
  "5 cooling",
  "11 venting",
  "12 opening",
  "13 removal",
];

interface Case {
  readonly step: string;
  readonly at: number;
  readonly finish: readonly string[];
  readonly hold: readonly string[];
  readonly scrap: readonly string[];
}

/** State changes from the stop to the next drop or the next stop. */
const stationStops: readonly Case[] = [
  {
    step: "drop",
    at: 2,
    finish: ["3 stopped", "22 closing", "23 blowing"],
    hold: ["2 stopped", "22 being cleared"],
    scrap: ["2 stopped", "22 being cleared"],
  },
  {
    step: "close",
    at: 3.5,
    // A pinched parison is blown, cooled and vented during the stop. Only the opening waits.
    finish: ["4 blowing", "5 cooling", "11 venting", "12 stopped", "23.5 opening"],
    hold: ["3.5 stopped", "23.5 being cleared"],
    scrap: ["3.5 stopped", "23.5 being cleared"],
  },
  ...[4.5, 6, 11.5].map((at): Case => {
    const physics = ["4 blowing", "5 cooling", "11 venting", "12 stopped"].filter(
      (each) => Number.parseFloat(each) > at,
    );
    const after = [...physics, `${at + 20} opening`, `${at + 21} removal`];
    return { step: at < 5 ? "blow" : at < 11 ? "cool" : "vent", at, finish: after, hold: after, scrap: after };
  }),
  {
    step: "open",
    at: 12.5,
    finish: ["13 stopped", "32.5 removal"],
    hold: ["12.5 stopped", "32.5 opening", "33 removal"],
    scrap: ["12.5 stopped", "32.5 being cleared"],
  },
  {
    step: "remove",
    at: 13.5,
    finish: ["14 stopped", "33.5 valve shifting to it"],
    hold: ["13.5 stopped", "33.5 removal", "34 valve shifting to it"],
    scrap: ["13.5 stopped", "33.5 being cleared"],
  },
  {
    step: "shift to port",
    at: 14.5,
    finish: ["15 stopped", "34.5 parison drop"],
    hold: ["14.5 stopped", "34.5 valve shifting to it", "35 parison drop"],
    scrap: ["14.5 stopped", "34.5 valve shifting to it", "35 parison drop"],
  },
];

const rules = ["finish", "hold", "scrap"] as const;

describe("a station that stops", () => {
  for (const row of stationStops) {
    it.each(rules)(`in the ${row.step}, at ${row.at} s: %s`, (step) => {
      const changes = changesOf(stoppedCell({ resource: "station 1", at: row.at, repair: 20, step }), "station 1", 36);
      const start = [...undisturbed, "14 valve shifting to it"].filter((each) => Number.parseFloat(each) < row.at);
      const expected = [...start, ...row[step]];
      expect(changes.slice(0, expected.length)).toEqual(expected);
    });
  }

  it("loses its shot in the drop; the valve shifts to neutral at once and the screw recharges", () => {
    const cell = stoppedCell({ resource: "station 1", at: 2, repair: 20, step: "hold" });
    expect(changesOf(cell, "valve", 21)).toEqual(["0 shifting", "1 open to station 1", "2 shifting", "3 neutral"]);
    expect(changesOf(cell, "plasticator", 21)).toEqual([
      "0 valve shifting",
      "1 delivering",
      "2 valve shifting",
      "3 recharging",
      "7 holding a full shot",
    ]);
  });
});

describe("a screw that stops", () => {
  it("in the drop, finish: completes the drop; the mold cycles on, the valve shifts to neutral, the recharge waits", () => {
    const cell = stoppedCell({ resource: "plasticator", at: 2, repair: 20, step: "finish" });
    expect(changesOf(cell, "plasticator", 26)).toEqual([
      "0 valve shifting",
      "1 delivering",
      "3 stopped",
      "22 recharging",
    ]);
    expect(changesOf(cell, "valve", 26)).toEqual(["0 shifting", "1 open to station 1", "3 shifting", "4 neutral"]);
    expect(changesOf(cell, "station 1", 26)).toEqual([...undisturbed, "14 screw stopped", "22 awaiting melt"]);
  });

  it.each(["hold", "scrap"] as const)(
    "in the drop, %s: loses the shot; the mold is cleared, the valve shifts to neutral",
    (step) => {
      const cell = stoppedCell({ resource: "plasticator", at: 2, repair: 20, step });
      expect(changesOf(cell, "plasticator", 23)).toEqual([
        "0 valve shifting",
        "1 delivering",
        "2 stopped",
        "22 recharging",
      ]);
      expect(changesOf(cell, "valve", 23)).toEqual(["0 shifting", "1 open to station 1", "2 shifting", "3 neutral"]);
      expect(changesOf(cell, "station 1", 23)).toEqual([
        "0 valve shifting to it",
        "1 parison drop",
        "2 being cleared",
        "5 screw stopped",
        "22 awaiting melt",
      ]);
    },
  );

  it("in the recharge: completes it under finish, and pauses it under hold and scrap", () => {
    const screw = (step: "finish" | "hold" | "scrap"): readonly string[] =>
      changesOf(stoppedCell({ resource: "plasticator", at: 5, repair: 20, step }), "plasticator", 28);
    expect(screw("finish").slice(2)).toEqual([
      "3 valve shifting",
      "4 recharging",
      "8 stopped",
      "25 valve shifting",
      "26 delivering",
    ]);
    for (const step of ["hold", "scrap"] as const)
      expect(screw(step).slice(2)).toEqual(["3 valve shifting", "4 recharging", "5 stopped", "25 recharging"]);
  });
});

describe("a valve that stops", () => {
  it("in the shift to a port: completes the shift under finish, and pauses it under hold", () => {
    const valve = (step: "finish" | "hold"): readonly string[] =>
      changesOf(stoppedCell({ resource: "valve", at: 0.5, repair: 20, step }), "valve", 22);
    expect(valve("finish")).toEqual(["0 shifting", "1 stopped", "20.5 open to station 1"]);
    expect(valve("hold").slice(0, 4)).toEqual(["0 shifting", "0.5 stopped", "20.5 shifting", "21 stopped"]);
  });
});

describe("a repair by an operator", () => {
  it("takes one operator until the stop ends", () => {
    const cell = stoppedCell({ resource: "station 1", at: 12.5, repair: 20, step: "hold", by: "operator" });
    expect(changesOf(cell, "operator 1", 40)).toEqual(["0 free", "12.5 repairing", "32.5 free"]);
  });
});

describe("the matrix", () => {
  const roles: readonly StepRole[] = [
    "valve.toPort",
    "mold.drop",
    "mold.own",
    "mold.close",
    "mold.own",
    "mold.blow",
    "mold.cool",
    "mold.vent",
    "mold.open",
    "mold.remove",
    "mold.own",
  ];
  const cycle = roles.map((role) => ({ role }));

  it("finds the place of the shot from the order of the cycle, extra steps included", () => {
    const places = cycle.map((_, at) => shotPlaceAt(at, cycle));
    const [before, drop, physics] = ["not yet delivered", "being delivered", "physics"];
    expect(places).toEqual([
      before,
      drop,
      "hanging",
      "hanging",
      "in the mold",
      physics,
      physics,
      physics,
      "in the mold",
      "in the mold",
      "removed",
    ]);
  });

  it("never pauses physics and never holds a hanging parison", () => {
    expect(Object.values(stopMatrix.physics)).toEqual(["run on", "run on", "run on"]);
    expect(stopMatrix.hanging).toEqual({ finish: "run on", hold: "lost", scrap: "lost" });
  });
});

describe("an operator at work", () => {
  it("finishes the removal of a station that stops, and then repairs it", () => {
    const cell = stoppedCell({ resource: "station 1", at: 13.5, repair: 20, step: "scrap", by: "operator" });
    const removedByOperator = {
      ...cell.stations[0]!,
      remove: { time: { kind: "fixed", value: 1 }, by: "operator" },
    } as const;
    const changes = changesOf({ ...cell, stations: [removedByOperator] }, "operator 1", 40);
    expect(changes).toEqual(["0 free", "13 removing", "14 repairing", "34 free"]);
  });
});
