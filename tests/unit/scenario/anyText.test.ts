// Reading any text gives a scenario or issues, and never throws.
import fc from "fast-check";
import { expect, it } from "vitest";
import { issueCodes } from "#scenario/reading/issueCodes.ts";
import { readScenario, type ScenarioReading } from "#scenario/resolving/readScenario.ts";
import { everything, log, twoStations, validTexts } from "./validTexts.ts";
import { isLong } from "../../support/caseCount.ts";

const options = { name: "cell", file: "cell.yaml", readText: () => log };

function expectAnswer({ scenario, issues }: ScenarioReading): void {
  const errors = issues.filter((issue) => issue.severity === "error");
  expect(scenario === undefined).toBe(errors.length > 0);
  for (const { code, place, message, remedy } of issues) {
    expect(Object.keys(issueCodes)).toContain(code);
    expect(place?.line).toBeGreaterThanOrEqual(1);
    expect(place?.column).toBeGreaterThanOrEqual(1);
    expect(message).not.toMatch(/invalid input|undefined|\[object/iu);
    expect(remedy).toMatch(/\w/u);
  }
}

it("accepts any text", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 200 }), (text) => expectAnswer(readScenario(text, options))),
  );
});

it("accepts any text of YAML's special characters", () => {
  const sign = fc.constantFrom(..."{}[]:,-?&*!|>'\"%#@ \n\t~.<=0a".split(""));
  fc.assert(fc.property(fc.string({ unit: sign, maxLength: 60 }), (text) => expectAnswer(readScenario(text, options))));
});

it("accepts any JSON", () => {
  fc.assert(fc.property(fc.json(), (text) => expectAnswer(readScenario(text, options))));
});

it("accepts a valid text with a piece removed or inserted", () => {
  const texts = validTexts.map(([, text]) => text);
  const piece = fc.oneof(
    fc.string({ maxLength: 8 }),
    fc.constantFrom("\n", "  ", ": ", "- ", "[", "}", "&a ", "*a", "0", ","),
  );
  fc.assert(
    fc.property(fc.constantFrom(...texts), fc.nat(), fc.nat(20), piece, (text, at, cut, put) => {
      const start = at % text.length;
      expectAnswer(readScenario(text.slice(0, start) + put + text.slice(start + cut), options));
    }),
  );
});

it("accepts a valid scenario with any value in any place", () => {
  const paths = [
    "product",
    "product.flash",
    "delivery",
    "delivery.recharge",
    "valve.shift",
    "stations",
    "stations[0]",
  ].concat(
    ["stations.left.steps", "stations.left.steps.cool", "stations.left.extra", "order", "run", "run.seed", "crew"],
    ["run.warmup", "stations.right.cavities", "products", "stations.right.name", "takeaway", "title"],
  );
  fc.assert(
    fc.property(fc.constantFrom(...paths), fc.jsonValue(), (path, value) => {
      expectAnswer(readScenario(twoStations, { ...options, set: [`${path}=${JSON.stringify(value)}`] }));
    }),
  );
});

it("accepts any setting", () => {
  fc.assert(
    fc.property(fc.array(fc.string({ maxLength: 30 }), { maxLength: 3 }), (set) => {
      expectAnswer(readScenario(everything, { ...options, set }));
    }),
  );
});

it("accepts any CSV file", () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 60 }), fc.boolean(), (text, headed) => {
      const csv = headed ? `shot,cool_s\n${text}` : text;
      expectAnswer(readScenario(everything, { ...options, readText: () => csv }));
    }),
  );
});

it("refuses aliases of aliases without expanding them", () => {
  const lines = Array.from({ length: 30 }, (_, index) => `x${index + 1}: &x${index + 1} [*x${index}, *x${index}]`);
  const { issues } = readScenario(["x0: &x0 a", ...lines].join("\n"), options);
  expect(issues.map((issue) => issue.code)).toContain("yaml-anchor");
});

it.each(["constructor", "toString", "hasOwnProperty"])("refuses a key called %s like any other", (key) => {
  const { issues } = readScenario(`${key}: 1\n${twoStations}`, options);
  expect(issues.map(({ code, path }) => [code, path])).toEqual([["unknown-key", key]]);
});

it("refuses the key __proto__ everywhere, because a mapping would lose it", () => {
  for (const text of [`__proto__: 1\n${twoStations}`, `${twoStations}takeaway: { __proto__: { time: 1 s } }\n`])
    expect(readScenario(text, options).issues.map(({ code }) => code)).toEqual(["yaml-key"]);
});

it.runIf(isLong)(
  "lists a limited number of issues for very long texts",
  () => {
    const station = "  - { cavites: 1 }\n";
    const step = "      - { after: x, name: pin, time: 3 }\n";
    const [head = "", tail = ""] = twoStations.split(/(?<=^ {4}extra:\n)/mu);
    const longTexts: readonly (readonly [string, string])[] = [
      [`stations:\n${station.repeat(5000)}`, "list-too-long"],
      [head + step.repeat(3000) + tail, "list-too-long"],
      [Array.from({ length: 5000 }, (_, index) => `key${index}: 1\n`).join(""), "more-faults"],
      ["title: a\n".repeat(2000), "duplicate-key"],
      ["- &a 1\n".repeat(2000), "yaml-anchor"],
      ["- *a\n".repeat(2000), "yaml-anchor"],
    ];
    for (const [text, code] of longTexts) {
      const { issues } = readScenario(text, options);
      expect(issues.map((issue) => issue.code)).toContain(code);
      expect(issues.length).toBeLessThan(250);
    }
  },
  30_000,
);
