// A starter scenario runs as it is, and with each of its groups of keys, alone or together.
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { runStudy } from "#analysis/study/study.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { deliveryKinds } from "#scenario/keys/deliveryKeys.ts";
import { scenarioSchema } from "#scenario/keys/scenarioSchema.ts";
import { starterScenario } from "#scenario/starter/starterScenario.ts";
import { firstCases, isLong } from "../../support/caseCount.ts";

const accepts = new Ajv2020({ strict: false }).compile(scenarioSchema());
const cases = deliveryKinds.flatMap((kind) => [1, 2, 4].map((stations) => ({ kind, stations })));

/** Titles of the groups; a note is the second line of one. */
function titlesOf(text: string): readonly string[] {
  return Array.from(text.matchAll(/^\n?## (.+)$/gmu), ([, title = ""]) => title).filter(
    (title) => !title.endsWith("."),
  );
}

/** As an editor does it: the `# ` is taken from the lines of a group, so that its title stays a comment. */
function uncommented(text: string, ...titles: readonly string[]): string {
  let isOn = false;
  const lines = text.split("\n").map((line) => {
    if (line === "") isOn = false;
    if (line.startsWith("## ")) isOn ||= titles.includes(line.slice(3));
    return isOn ? line.replace(/^# /u, "").replace(/^## /u, "# ") : line;
  });
  return lines.join("\n");
}

function read(text: string, ...set: readonly string[]) {
  return readSettled(text, { name: "mine", file: "mine.yaml", set });
}

describe.each(isLong ? cases : cases.filter(({ stations }) => stations === 2))(
  "a starter for $stations stations, $kind",
  ({ kind, stations }) => {
    const text = starterScenario({ stations, kind }, "mine.yaml");
    const titles = titlesOf(text);

    it("names the schema, asks a question, and says that its numbers are placeholders", () => {
      const [schema, question] = text.split("\n");
      expect(schema).toBe("# yaml-language-server: $schema=./scenario.schema.json");
      expect(question).toMatch(/^# .*\?$/u);
      expect(text).toContain("placeholders");
      expect(text).not.toMatch(/undefined| @\w/u);
    });

    it("is read without a finding, with that many stations of that kind", () => {
      const { scenario, issues } = read(text);
      expect(issues).toEqual([]);
      expect([scenario?.stations.length, scenario?.delivery.kind]).toEqual([stations, kind]);
      expect(scenario?.stations.some(({ partMass, process }) => partMass !== undefined || process !== undefined)).toBe(
        false,
      );
      expect(accepts(parse(text))).toBe(true);
    });

    it("has a group of each further subject", () => {
      expect(titles.length).toBeGreaterThan(12);
      for (const title of [
        "Product: masses and material",
        "Operators",
        "Machine stops",
        "Work shifts",
        "Quality",
        "Takeaway",
        "Costs",
      ]) {
        expect(titles).toContain(title);
      }
    });

    it.each(titles)("with %s alone is read without a finding", (title) => {
      const changed = uncommented(text, title);
      expect(changed).not.toBe(text);
      expect(Object.keys(parse(changed) as object).length).toBeGreaterThanOrEqual(
        Object.keys(parse(text) as object).length,
      );
      expect(JSON.stringify(parse(changed))).not.toBe(JSON.stringify(parse(text)));
      expect(read(changed).issues).toEqual([]);
      expect(accepts(parse(changed))).toBe(true);
    });

    it("with all groups is read without a finding", () => {
      const changed = uncommented(text, ...titles);
      expect(read(changed).issues).toEqual([]);
      expect(accepts(parse(changed))).toBe(true);
    });

    it("shows every key of the top of a scenario", () => {
      const all = Object.keys(scenarioSchema()["properties"] as object);
      const shown = Object.keys(parse(uncommented(text, ...titles)) as object);
      // `products` stands in place of `product`, and `maxHang` has a meaning only with `clear`.
      const apart = ["$schema", "products", "maxHang"];
      expect(all.filter((key) => !shown.includes(key) && !apart.includes(key))).toEqual([]);
    });
  },
);

describe.each(firstCases(deliveryKinds, 1))("a starter of %s can be simulated", (kind) => {
  const text = starterScenario({ stations: 2, kind }, "mine.yaml");
  const titles = titlesOf(text);

  it.each(["none", "all", ...titles])("with groups: %s", (title) => {
    const on = title === "none" ? [] : title === "all" ? titles : [title];
    const { scenario } = read(uncommented(text, ...on), "run.length=1 h", "run.replications=2", "run.warmup=5 min");
    const outcome = runStudy(scenario!);
    expect(outcome.kind).toBe("found");
    if (outcome.kind === "stuck") return;
    const good = outcome.study.measures.find(({ measure }) => measure === "good parts per hour")?.interval.mean ?? 0;
    // The start-up heats for two hours when the first shift begins.
    if (!on.includes("Start-up")) expect(good).toBeGreaterThan(100);
    expect(outcome.study.measures.some(({ measure }) => measure === "melt per hour")).toBe(
      on.includes("Product: masses and material"),
    );
  });
});
