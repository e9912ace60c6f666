// What is not built yet is refused by name, never ignored; and nothing that is built is refused.
import { expect, it } from "vitest";
import { notBuilt } from "#scenario/notBuilt.ts";
import { readScenario } from "#scenario/readScenario.ts";
import { scenarioSchema } from "#scenario/scenarioSchema.ts";
import { twoStations } from "./validTexts.ts";

/** A good value for every key that may stand there but is not built. */
const samples: Readonly<Record<string, string>> = {
  "delivery.meltRise": "5 °C",
  "run.precision": "1 %",
};

const uses = notBuilt.flatMap(({ path, values }) =>
  (values ?? [samples[path] ?? ""]).map((value) => ({ path: path.replace("*", "left"), value })),
);

it.each(uses)("$path=$value", ({ path, value }) => {
  const { scenario, issues } = readScenario(twoStations, {
    name: "cell",
    file: "cell.yaml",
    set: [`${path}=${value}`],
  });
  expect(scenario).toBeUndefined();
  expect(issues.map(({ code, fate }) => ({ code, fate, path }))).toEqual([
    { code: "not-built-yet", fate: "file", path },
  ]);
  expect(issues[0]?.message).toContain(path.split(".").at(-1));
});

it("names the same keys that the schema describes as not built yet", () => {
  const marked = JSON.stringify(scenarioSchema()).match(/not built yet|Not built yet/gu) ?? [];
  const once = new Set(notBuilt.map(({ path }) => path));
  expect(marked).toHaveLength(once.size);
});

it.each([["delivery.meltRise=5", "unit-missing"]])(
  "checks the form of what is not built as well: %s",
  (setting, code) => {
    const set = [setting];
    const codes = readScenario(twoStations, { name: "cell", file: "cell.yaml", set }).issues.map((issue) => issue.code);
    expect(codes).toEqual(["not-built-yet", code]);
  },
);
