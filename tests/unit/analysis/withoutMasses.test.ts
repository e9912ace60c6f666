// A cell timed with a stopwatch alone runs without product, mass, material or rate; only what is a mass is left out, and named.
import { describe, expect, it } from "vitest";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { stepTimes } from "#analysis/ideal/stepTimes.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { runStudy, type Study } from "#analysis/study/study.ts";
import { stationWindows } from "#analysis/window/stationWindow.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { checkAnswer } from "#report/answers/checkAnswer.ts";
import { runAnswer } from "#report/answers/runAnswer.ts";
import { extrusionWords } from "#report/words/extrusionWords.ts";
import { toCsv } from "#report/tables/csv.ts";
import { studyTables } from "#report/tables/studyTables.ts";
import type { Scenario } from "#scenario/scenario.ts";

const travel = "travelIn: 0.7 s, cut: 0.2 s, travelOut: 0.7 s, ";
const steps = "close: 0.6 s, blow: 0.5 s, cool: { triangular: [7 s, 7.5 s, 9 s] }, vent: 0.5 s, open: 0.6 s";

/** Two stations whose times were all measured. */
function timedOnly(kind: string): string {
  const isContinuous = kind === "continuous";
  return `format: 1
delivery: { kind: ${kind}, recharge: { triangular: [3.7 s, 3.9 s, 4.2 s] }${isContinuous ? "" : ", drop: 1.2 s"} }
${isContinuous ? "" : "valve: { shift: 0.3 s }"}
stations: { count: 2, cavities: 2, steps: { ${isContinuous ? travel : ""}${steps}, remove: { time: 0.8 s } } }
run: { length: 1 h, replications: 3, seed: stopwatch, warmup: 2 min }
`;
}

const read = (text: string, ...set: readonly string[]) => readSettled(text, { name: "timed", file: "timed.yaml", set });

function scenarioOf(text: string): Scenario {
  const { scenario, issues } = read(text);
  expect(issues).toEqual([]);
  return scenario!;
}

function studyOf(text: string): Study {
  const outcome = runStudy(scenarioOf(text));
  if (outcome.kind === "stuck") throw new Error(outcome.issue.message);
  return outcome.study;
}

const kinds = ["reciprocating-screw", "accumulator-head", "continuous"];
const product = "product: { partMass: 42 g, flash: 30 % of part }\n";

describe.each(kinds)("a %s timed with a stopwatch alone", (kind) => {
  const text = timedOnly(kind);
  const [without, weighed] = [studyOf(text), studyOf(text + product)];

  it("makes what the same cell with a mass makes, all but what is a mass", () => {
    const told = new Set(without.measures.map(({ measure }) => measure));
    expect(without.measures).toEqual(weighed.measures.filter(({ measure }) => told.has(measure)));
    const left = new Set(weighed.measures.map(({ measure }) => measure).filter((measure) => !told.has(measure)));
    expect([...left]).toEqual(kind === "continuous" ? ["melt per hour", "excess melt"] : ["melt per hour"]);
    expect(told).toContain("good parts per hour");
    const found = ({ states, bottleneck, kpis, ideal }: Study) => [states, bottleneck, kpis, ideal.secondsPerShot];
    expect(found(without)).toEqual(found(weighed));
  });

  it("is told without a gap, and names what would answer the rest", () => {
    const { scenario, ideal } = without;
    const checked = checkAnswer({
      scenario,
      ideal,
      times: stepTimes(scenario),
      windows: stationWindows(scenario, ideal),
    });
    for (const answer of [runAnswer(without), checked]) {
      expect(answer.replaceAll(/\s+/gu, " ")).toContain(
        "Not answered: melt in kg/h (give `product.partMass`); the process window (give `product.material`).",
      );
      expect(answer).not.toMatch(/undefined|NaN|kg\/h {2}/u);
    }
    for (const table of studyTables([without])) expect(toCsv(table)).not.toMatch(/undefined|NaN/u);
    expect(runAnswer(weighed)).toContain("kg/h");
    expect(runAnswer(weighed)).not.toContain("partMass");
  });
});

// 5 s for the longer recharge, 0.3 s valve, 1.2 s drop, by hand; the other station's recharge takes 2 s.
it("charges a cold screw for as long as the longest recharge takes", () => {
  const stations = ["a", "b"].map(
    (name, i) =>
      `{ name: ${name}, cavities: 1, delivery: { recharge: ${2 + 3 * i} s }, steps: { ${steps}, remove: { time: 0.8 s } } }`,
  );
  const { scenario } = read(
    timedOnly("reciprocating-screw").replace(/stations: .*/u, `stations: [${stations.join(", ")}]`),
    "run.start=cold",
    "run.warmup=0 s",
  );
  const { stations: ran } = runCell(planCell(scenario!), { replication: 1 });
  expect(Math.min(...ran.map(({ firstShotTick }) => firstShotTick))).toBe(6_500_000);
});

it("leaves out the costs by mass and names the key", () => {
  const { costs } = studyOf(`${timedOnly("reciprocating-screw")}
costs: { currency: EUR, resin: 1.4 per kg, cooling: 0.1 per kg, machine: 36 per h }
`);
  expect(costs!.rows.map(({ item }) => item)).toEqual(["labor", "machine"]);
  const missing = new Map(costs!.missing.map(({ item, keys }) => [item, keys]));
  expect(missing.get("resin")).toEqual(["product.partMass"]);
  expect(missing.get("cooling")).toEqual(["product.partMass"]);
  expect(missing.get("drive energy")).toContain("product.partMass");
});

it("shows the rows of the process window that need no mass, and the mass among the missing keys", () => {
  const scenario = scenarioOf(
    `${timedOnly("reciprocating-screw")}product: { material: HDPE, wall: { thickest: 1.2 mm } }\n`,
  );
  const [window] = stationWindows(scenario, idealCycle(scenario));
  expect(window!.rows.some(({ quantity }) => quantity.startsWith("cooling"))).toBe(true);
  const keys = new Set(window!.missing.flatMap((row) => row.keys));
  expect(keys).toContain("product.partMass");
  expect(keys).not.toContain("delivery.throughput");
});

// 2 × (0.7 + 0.6 + 0.2 + 0.7 + 0.5 + 23.5/3 + 0.5 + 0.6 + 0.8 s) / 4 = 6.217 s; 1 − (11.8/3)/6.217 = 36.7 %, by hand.
it("says in seconds and shares how a screw that never stops keeps step", () => {
  const words = (rate: string): string => {
    const { scenario } = read(timedOnly("continuous"), `delivery.rate=${rate}`);
    return extrusionWords(scenario!, idealCycle(scenario!)).join(" ");
  };
  expect(words("matched")).toBe(
    "The screw is turned down from a parison in 3.93 s to match the molds: a parison in 6.22 s.",
  );
  expect(words("fixed")).toContain("a parison in 3.93 s, a mold every 6.22 s, excess melt 37 % of all to regrind.");
});

describe("what needs a mass says so, at the key that is missing", () => {
  it.each([
    [
      "reciprocating-screw",
      "delivery={ kind: reciprocating-screw, plasticatingRate: 110 kg/h, drop: 1 s }",
      "plasticatingRate",
    ],
    [
      "reciprocating-screw",
      "delivery={ kind: reciprocating-screw, recharge: 4 s, deliveryRate: 400 kg/h }",
      "deliveryRate",
    ],
    ["reciprocating-screw", "stations[0].delivery={ deliveryRate: 400 kg/h }", "deliveryRate"],
    ["reciprocating-screw", "quality={ lightest: 41 g, shotSpread: 1 % }", "quality.lightest"],
    ["reciprocating-screw", "quality={ heaviest: 44 g, shotSpread: 1 % }", "quality.heaviest"],
    ["reciprocating-screw", "startUp={ afterOff: 8 h, purge: 3 kg }", "startUp.purge"],
    ["continuous", "delivery.rateRange={ min: 50 kg/h }", "rateRange"],
    [
      "accumulator-head",
      "delivery={ kind: accumulator-head, accumulator: common, shotCapacity: 1 kg, recharge: 4 s, drop: 1 s }",
      "accumulator: common",
    ],
  ])("%s with %s", (kind, set, key) => {
    const text = timedOnly(kind).replace(/stations: (.*)/u, "stations: [$1]");
    const bare = read(text, set);
    expect(bare.scenario).toBeUndefined();
    expect(bare.issues).toMatchObject([
      { code: "missing", path: "product", remedy: expect.stringContaining("partMass") },
    ]);
    expect(bare.issues[0]!.message).toContain(`\`${key}\``);
    const unweighed = read(`${text}product: { flash: 12 g }\n`, set);
    expect(unweighed.issues.map(({ code, path }) => [code, path])).toEqual([["missing", "product.partMass"]]);
    expect(read(text + product, set).issues).toEqual([]);
  });
});
