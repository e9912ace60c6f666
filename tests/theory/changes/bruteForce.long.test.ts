// What one change buys, against the changed cell written out and run anew with other random numbers.
import { describe, expect, it } from "vitest";
import { pairedDifference } from "#analysis/statistics/pairedDifference.ts";
import { firstCases } from "../../support/caseCount.ts";
import { changesOf, scenarioFrom, studyFrom } from "../../support/changedCell.ts";

const screw = `product: { partMass: 42 g, flash: 30 % of part }
delivery: { kind: reciprocating-screw, plasticatingRate: 110 kg/h, deliveryRate: 420 kg/h, shotCapacity: 0.40 kg }
valve: { shift: 0.30 s }`;
const times = "close: 0.6 s, blow: 0.5 s, cool: { triangular: [7 s, 7.5 s, 9 s] }, vent: 0.5 s, open: 0.6 s";
const machine = `${times}, remove: { time: { triangular: [0.7 s, 0.8 s, 1.0 s] } }`;
const byOperator = `${times}, remove: { time: { lognormal: [1.6 s, 0.3 s] }, by: operator }`;
const run = "run: { length: 4 h, replications: 12, seed: SEED, warmup: 10 min }";

type Edits = readonly (readonly [from: string, to: string])[];

const shorterCooling: Edits = [["[7 s, 7.5 s, 9 s]", "[6.65 s, 7.125 s, 8.55 s]"]];
const fasterScrew: Edits = [["110 kg/h", "121 kg/h"]];
const shorterShift: Edits = [["shift: 0.30 s", "shift: 0.20 s"]];
const secondOperator: Edits = [["operators: 1", "operators: 2"]];

interface Cell {
  readonly text: string;
  readonly edits: Readonly<Record<string, Edits>>;
}

const cells: Readonly<Record<string, Cell>> = {
  "a crew that walks": {
    text: `${screw}
stations: { count: 4, name: side, cavities: 1, steps: { ${byOperator} } }
takeaway: { packing: { time: { triangular: [1.2 s, 1.5 s, 2.4 s] }, by: operator, buffer: 12 } }
crew: { operators: 1, walk: 0.8 s }
${run}`,
    edits: {
      "cooling −5 %": shorterCooling,
      "screw 10 % faster": fasterScrew,
      "one operator more": secondOperator,
      "walks half as long": [["walk: 0.8 s", "walk: 0.4 s"]],
      "packing −10 %": [["[1.2 s, 1.5 s, 2.4 s]", "[1.08 s, 1.35 s, 2.16 s]"]],
      "removal −10 %": [["[1.6 s, 0.3 s]", "[1.44 s, 0.27 s]"]],
    },
  },
  "a takeaway": {
    text: `${screw}
stations: { count: 2, name: side, cavities: 2, steps: { ${machine} } }
takeaway: { belt: { time: 20 s, places: 12 }, trim: { time: { gamma: [3.2 s, 0.6 s] }, buffer: 4 } }
${run}`,
    edits: {
      "cooling −5 %": shorterCooling,
      "screw 10 % faster": fasterScrew,
      "trim −10 %": [["[3.2 s, 0.6 s]", "[2.88 s, 0.54 s]"]],
      "belt: one place more": [["places: 12", "places: 13"]],
    },
  },
  stops: {
    text: `${screw}
stations: { count: 2, name: side, cavities: 2, steps: { ${machine}, clear: { time: 30 s, by: operator } } }
crew: { operators: 1 }
stops:
  - { name: flash, resource: every station, between: { exponential: 20 min }, repair: { gamma: [90 s, 60 s] }, by: operator }
  - { name: heater, resource: plasticator, between: { exponential: 1 h }, repair: { gamma: [5 min, 3 min] }, step: finish }
${run}`,
    edits: {
      "cooling −5 %": shorterCooling,
      "screw 10 % faster": fasterScrew,
      "one operator more": secondOperator,
      "half the time of flash": [["repair: { gamma: [90 s, 60 s] }", "repair: { gamma: [45 s, 30 s] }"]],
      "no heater": [[/  - \{ name: heater.*\n/u.source, ""]],
    },
  },
  "unequal stations": {
    text: `${screw}
stations:
  - { name: left, cavities: 2, steps: { ${machine} } }
  - { name: right, cavities: 1, steps: { ${machine.replace("[7 s, 7.5 s, 9 s]", "[10 s, 11 s, 13 s]")} } }
  - { name: third, cavities: 3, steps: { ${machine.replace("[7 s, 7.5 s, 9 s]", "[12 s, 13 s, 14 s]")} } }
${run}`,
    edits: {
      "cooling −5 % at left": shorterCooling,
      "cooling −5 % at right": [["[10 s, 11 s, 13 s]", "[9.5 s, 10.45 s, 12.35 s]"]],
      "cooling −5 % at third": [["[12 s, 13 s, 14 s]", "[11.4 s, 12.35 s, 13.3 s]"]],
      "screw 10 % faster": fasterScrew,
      "valve shift −0.1 s": shorterShift,
    },
  },
  "a common accumulator": {
    text: `product: { partMass: 420 g, flash: 30 % of part }
delivery: { kind: accumulator-head, accumulator: common, plasticatingRate: { normal: [110 kg/h, 4 kg/h] }, deliveryRate: 900 kg/h, shotCapacity: 1.4 kg }
valve: { shift: 0.30 s }
stations: { count: 2, name: side, cavities: 1, steps: { ${machine.replace("[7 s, 7.5 s, 9 s]", "[24 s, 27 s, 36 s]")} } }
${run}`,
    edits: {
      "cooling −5 %": [["[24 s, 27 s, 36 s]", "[22.8 s, 25.65 s, 34.2 s]"]],
      "screw 10 % faster": [["[110 kg/h, 4 kg/h]", "[121 kg/h, 4.4 kg/h]"]],
      "valve shift −0.1 s": shorterShift,
    },
  },
  "a calendar": {
    text: `${screw.replace("shotCapacity: 0.40 kg", "shotCapacity: 0.40 kg, holdUp: 2.4 kg, manifoldHoldUp: 0.35 kg")}
stations: { count: 2, name: side, cavities: 2, steps: { ${machine} } }
calendar:
  from: 2026-03-23
  breaks: stop
  shifts: [{ start: 06:00, end: 14:00, breaks: [{ at: 09:30, time: 30 min }] }]
startUp: { afterOff: 6 h, heatUp: 45 min, purge: 3 kg, scrap: 5 cycles }
changes:
  - { name: to blue, kind: color, on: 2026-03-24, at: 10:00, time: { gamma: [25 min, 5 min] }, residue: 0.1 % }
run: { length: 3 d, replications: 12, seed: SEED }`,
    edits: {
      "cooling −5 %": shorterCooling,
      "screw 10 % faster": fasterScrew,
      "warm starts": [[/startUp: .*\n/u.source, ""]],
      "no color change": [[/changes:\n.*\n/u.source, ""]],
      "no breaks": [[", breaks: [{ at: 09:30, time: 30 min }]", ""]],
    },
  },
};

/** The text with the edits; one that is longer than a few letters and holds a pattern is a pattern. */
function edited(text: string, edits: Edits): string {
  return edits.reduce((changed, [from, to]) => {
    const next = changed.includes(from) ? changed.replaceAll(from, to) : changed.replace(new RegExp(from, "u"), to);
    expect(next).not.toBe(changed);
    return next;
  }, text);
}

/** Good parts of each replication: of an hour, with a calendar of three days. */
function goodParts(text: string): readonly number[] {
  const { measures, scenario } = studyFrom(scenarioFrom(text));
  const found = measures.find(({ resource, measure }) => resource === "cell" && measure === "good parts per hour")!;
  const hours = scenario.calendar === undefined ? 1 : 72;
  return found.values.map((value) => value! * hours);
}

/** Many runs on a busy machine. */
const longest = 300_000;

describe.each(firstCases(Object.entries(cells), 1))("what one change buys in a cell with %s", (_, { text, edits }) => {
  it(
    "agrees with the changed cell, run anew with another seed, in gain and in rank",
    () => {
      const { rows } = changesOf(`format: 1\n${text.replace("SEED", "one")}`);
      const other = `format: 1\n${text.replace("SEED", "other")}`;
      const base = goodParts(other);
      const names = Object.keys(edits);
      const both = names.map((name) => {
        const row = rows.find((each) => each.name === name);
        expect(row, `${name} of ${rows.map((each) => each.name).join(", ")}`).toBeDefined();
        const anew = pairedDifference(goodParts(edited(other, edits[name]!)), base, { comparisons: names.length });
        return { name, gain: row!.gain.mean, half: row!.simultaneousHalfWidth!, anew };
      });
      for (const { name, gain, half, anew } of both) {
        expect(Math.abs(gain - anew.mean), name).toBeLessThanOrEqual(half + anew.simultaneousHalfWidth! + endShots);
      }
      for (const one of both) {
        for (const less of both.filter(({ gain, half }) => one.gain - one.half > gain + half)) {
          const beyond =
            less.anew.mean - less.anew.simultaneousHalfWidth! > one.anew.mean + one.anew.simultaneousHalfWidth!;
          expect(beyond, `${one.name} before ${less.name}`).toBe(false);
        }
      }
    },
    longest,
  );
});

/** Each of two runs with little spread ends with a whole shot of three parts or without it, in 4 hours. */
const endShots = (2 * 3) / 4;
