// The commands check, run and compare: printed answers, files, exit codes and reproducible bytes.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { Ajv2020 as Ajv } from "ajv/dist/2020.js";
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { tableSpecs } from "#report/tables/tableSpecs.ts";
import { isLong } from "../support/caseCount.ts";
import { cellText } from "../support/cellScenario.ts";
import { shippedText } from "../support/reported.ts";
import { callBlowcell, newFolder } from "./callBlowcell.ts";
import { callHere } from "./callHere.ts";

const folder = newFolder();
const inFolder = (name: string) => path.join(folder, name);

function fileOf(name: string, text: string): string {
  writeFileSync(inFolder(name), text);
  return name;
}

const varied = (stations: number) => cellText(stations).replace("cool: 8 s", "cool: { triangular: [7 s, 8 s, 9 s] }");
const one = fileOf("one.yaml", varied(1));
const two = fileOf("two.yaml", varied(2));
const call = (...args: readonly string[]) => callHere(args, { folder });
/** As a process of the built program. */
const callBuilt = (...args: readonly string[]) => callBlowcell(args, { folder });
const bytesOf = (out: string) =>
  Object.fromEntries(
    readdirSync(inFolder(out)).map((name) => [name, readFileSync(path.join(inFolder(out), name), "latin1")]),
  );
const notOfRuns = [
  "slack",
  "totals",
  "measured",
  "sweep",
  "choose",
  "promise",
  "finish",
  "promise-levers",
  "fit",
  "match",
];
const fileNames = (leftOut: readonly string[]) =>
  tableSpecs
    .map(({ name }) => name)
    // Written only where they are asked for, or by other commands.
    .filter((name) => ![...leftOut, ...notOfRuns].includes(name))
    .map((name) => `${name}.csv`)
    .concat("datapackage.json", "report.html")
    .toSorted();

describe("check", () => {
  it("prints on standard output, writes no files, and exits with 0", async () => {
    const before = readdirSync(folder);
    const { code, output, errors } = await call("check", one, two);
    expect({ code, errors }).toEqual({ code: 0, errors: "" });
    // The cell as a timed event graph, computed independently of this project [C]: 13.05 s and 13.05 / 2 s a shot.
    expect(output).toContain("The ideal cycle is 13.05 s a shot");
    expect(output).toContain(`The ideal cycle is ${(13.05 / 2).toFixed(2)} s a shot`);
    expect(readdirSync(folder)).toEqual(before);
  });

  it("prints the valid files, and exits with the worst code of all", async () => {
    const { code, output, errors } = await call("check", one, "onee.yaml");
    expect(code).toBe(2);
    expect(output).toContain("The ideal cycle");
    expect(errors).toContain("Did you mean one.yaml?");
  });

  it("exits with 1 for a cell that cannot work: a shot above the capacity", async () => {
    const { code, output, errors } = await call("check", one, "--set", "delivery.shotCapacity=50 g");
    expect({ code, output }).toEqual({ code: 1, output: "" });
    expect(errors).toContain("error");
  });

  it("prints the process window of estimated steps, and refuses contradictory values", async () => {
    const drum = fileOf("drum.yaml", shippedText("large-part"));
    const { code, output, errors } = await call("check", drum);
    expect({ code, errors }).toEqual({ code: 0, errors: "" });
    expect(output).toMatch(/sag of the parison when the +9.99 % +at most 8 % +above\n +mold has closed/u);
    expect(output).toContain("sag of the parison when the mold has closed: Drop faster");
    const hot = await call("check", drum, "--set", "product.moldTemperature=250 °C");
    expect({ code: hot.code, output: hot.output }).toEqual({ code: 2, output: "" });
    expect(hot.errors).toContain("[values-contradict]");
    const endless = await call("check", drum, "--set", "product.airSupply=5 bar");
    expect({ code: endless.code, output: endless.output }).toEqual({ code: 2, output: "" });
    expect(endless.errors).toContain("[estimate-endless]");
  });

  it("exits with 2 for an unreadable value", async () => {
    expect((await call("check", one, "--set", "stations.steps.cool=7,5 s")).code).toBe(2);
    expect((await call("check", one, "--set", "nonsense")).code).toBe(2);
  });
});

describe("run", () => {
  it("writes its tables into reports/<scenario name>, and prints its answer on standard output", async () => {
    const { code, output, errors } = await call("run", two);
    expect(code).toBe(0);
    expect(output).toMatch(/^Bottleneck +.* % busy\): cooling/m);
    expect(errors).toBe("report.html and 8 CSV files are in reports/two\n");
    expect(readdirSync(inFolder("reports/two")).toSorted()).toEqual(
      fileNames(["comparison", "payback", "lost", "cost", "stops", "calendar", "window", "events", "shots"]),
    );
  });

  it("writes the columns of the data dictionary in their order", () => {
    for (const [name, bytes] of Object.entries(bytesOf("reports/two"))) {
      if (!name.endsWith(".csv")) continue;
      const spec = tableSpecs.find((each) => `${each.name}.csv` === name);
      expect(bytes.split("\r\n", 1)[0], name).toBe(spec?.columns.map((column) => column.name).join(","));
    }
  });

  it("writes the same bytes again, and with the stations listed in another order", async () => {
    const named = (names: readonly string[]) =>
      varied(1).replace(/stations:\n {2}count: 1\n {2}cavities: 2\n {2}steps: (.*)\n/, (_, steps: string) =>
        ["stations:", ...names.map((name) => `  - { name: ${name}, cavities: 2, steps: ${steps} }`), ""].join("\n"),
      );
    callBuilt("run", fileOf("sides.yaml", named(["left", "right"])), "--out", "first");
    callBuilt("run", "sides.yaml", "--out", "second");
    fileOf("sides.yaml", named(["right", "left"]));
    await call("run", "sides.yaml", "--out", "third");
    expect(bytesOf("second")).toEqual(bytesOf("first"));
    // Only the report contains the text of the scenario, and only the package its checksum.
    const tablesOf = (out: string) => ({ ...bytesOf(out), "report.html": "", "datapackage.json": "" });
    expect(tablesOf("third")).toEqual(tablesOf("first"));
    await call("run", "sides.yaml", "--out", "fourth", "--seed", "other");
    expect(bytesOf("fourth")).not.toEqual(bytesOf("first"));
  });

  it("takes seed, replications and length from the call", async () => {
    const { output } = await call(
      "run",
      two,
      "--out",
      "short",
      "--seed",
      "007",
      "--replications",
      "2",
      "--length",
      "1 h",
    );
    expect(output).toContain("2 replications of 60 min");
    expect(output).toContain('seed "007"');
  });

  it("prints nothing with --quiet, and writes its files", async () => {
    expect(await call("run", two, "--quiet", "--out", "quiet")).toEqual({ code: 0, output: "", errors: "" });
    expect(bytesOf("quiet")).toEqual(bytesOf("reports/two"));
  });

  it("adds events and shots with --events", async () => {
    const { code } = await call("run", two, "--events", "--out", "events", "--replications", "2", "--length", "30 min");
    expect(code).toBe(0);
    expect(readdirSync(inFolder("events")).toSorted()).toEqual(
      fileNames(["comparison", "payback", "lost", "cost", "stops", "calendar", "window"]),
    );
    const rows: readonly Readonly<Record<string, string>>[] = parse(bytesOf("events")["events.csv"] ?? "", {
      columns: true,
    });
    expect([...new Set(rows.map((row) => row["replication"]))]).toEqual(["1", "2"]);
  });

  it("writes cost.csv and stops.csv for a scenario with costs and stops, and prints the cost", async () => {
    const costs = "costs={ currency: EUR, resin: 1.40 per kg }";
    const stops = "stops=[{ name: jam, resource: valve, between: 30 min, repair: 2 min, step: finish }]";
    const { code, output } = await call("run", two, "--out", "paid", "--set", costs, "--set", stops);
    expect(code).toBe(0);
    expect(output).toMatch(/^Cost +[0-9.]+(?: ± [0-9.]+)? EUR per 1,000 good parts: resin 100 %$/m);
    expect(output).toMatch(/^\d more cost rows with `costs\./m);
    expect(Object.keys(bytesOf("paid"))).toEqual(expect.arrayContaining(["cost.csv", "kpi.csv", "stops.csv"]));
    expect(bytesOf("paid")["stops.csv"]).toMatch(/^two,"costs=.*",valve,jam,/m);
  });

  it("writes no files for a wrong scenario", async () => {
    const { code, output } = await call("run", two, "--set", "stations.cavities=0", "--out", "wrong");
    expect({ code, output }).toEqual({ code: 2, output: "" });
    expect(readdirSync(folder)).not.toContain("wrong");
  });

  it("exits with 74 when --out is a file", async () => {
    const { code, errors } = await call("run", two, "--out", fileOf("taken", ""));
    expect(code).toBe(74);
    expect(errors).toContain("remedy");
  });
});

describe("compare", () => {
  it("writes all tables of all scenarios into reports/<base>-against-<others>", async () => {
    const { code, output } = await call("compare", one, two);
    expect(code).toBe(0);
    expect(output).toMatch(/^two makes .* good parts an hour more than one/m);
    expect(readdirSync(inFolder("reports/one-against-two")).toSorted()).toEqual(
      fileNames(["payback", "changes", "lost", "cost", "stops", "calendar", "window", "events", "shots"]),
    );
    const rows: readonly Readonly<Record<string, string>>[] = parse(
      bytesOf("reports/one-against-two")["throughput.csv"] ?? "",
      {
        columns: true,
      },
    );
    expect([...new Set(rows.map((row) => row["scenario"]))]).toEqual(["one", "two"]);
  });

  it("compares the pairs that --against names, and refuses a name that it does not know", async () => {
    const three = fileOf("three.yaml", varied(3));
    const pairsIn = async (against: string): Promise<readonly string[]> => {
      const args = ["--against", against, "--out", "pairs", "--replications", "2", "--length", "1 h", "--quiet"];
      expect((await call("compare", one, two, three, ...args)).code).toBe(0);
      const rows: readonly Readonly<Record<string, string>>[] = parse(bytesOf("pairs")["comparison.csv"] ?? "", {
        columns: true,
      });
      expect([...new Set(rows.map(({ method }) => method))]).toEqual(["Bonferroni"]);
      return [...new Set(rows.map((row) => `${row["base"]} ${row["other"]} of ${row["comparisons"]}`))];
    };
    expect(await pairsIn("previous")).toEqual(["one two of 2", "two three of 2"]);
    expect(await pairsIn("all")).toEqual(["one two of 3", "one three of 3", "two three of 3"]);
    expect(await pairsIn("two")).toEqual(["two one of 2", "two three of 2"]);
    const { code, output, errors } = await call("compare", one, two, "--against", "four");
    expect({ code, output }).toEqual({ code: 2, output: "" });
    expect(errors).toContain("--against: error: four is none of the compared layouts [against-unknown]");
  });

  it.runIf(isLong)("compares 50 layouts, and refuses 51", async () => {
    const many = Array.from({ length: 51 }, (_, i) => fileOf(`layout-${i}.yaml`, cellText(1)));
    const brief = ["--replications", "2", "--length", "20 min", "--quiet", "--set", "run.warmup=0 s"];
    expect((await call("compare", ...many.slice(0, 50), ...brief)).code).toBe(0);
    expect(readdirSync(inFolder("reports")).some((name) => name.startsWith("layout-0-against-49-layouts"))).toBe(true);
    const { code, errors } = await call("compare", ...many, ...brief);
    expect(code).toBe(2);
    expect(errors).toContain("51 layouts are compared, the most are 50 [compare-many]");
  });

  it("prints cost and payback of a layout with an investment, and writes payback.csv", async () => {
    const rates = (more: string) => `costs: { currency: EUR, machine: 40 per h, station: 5 per h${more} }\n`;
    const base = fileOf("base.yaml", cellText(1, rates("")));
    const bought = fileOf("bought.yaml", cellText(2, rates(", investment: 60000")));
    const { output } = await call("compare", base, bought, "--out", "payback");
    // Twice the parts for 50 instead of 45 an hour: the base's parts cost 25 instead of 45, and 60,000 / 20 = 3,000.
    expect(output).toMatch(/^bought pays back 60,000 EUR more investment than base in (?:2,9[89]|3,0[01])\d h/mu);
    expect(output).toMatch(/^base +45 /mu);
    expect(output).toMatch(/^bought +50 +\+5 /mu);
    expect(bytesOf("payback")["payback.csv"]).toContain("\r\nbase,bought,,EUR,saving,60000,");
  });

  it.each([
    [[one], "there is only one scenario"],
    [[one, path.join(folder, one)], "two scenarios are called one"],
  ])("exits with 2 for %j", async (files, words) => {
    const { code, output, errors } = await call("compare", ...files);
    expect({ code, output }).toEqual({ code: 2, output: "" });
    expect(errors).toContain(words);
  });
});

describe("long work", () => {
  const long = ["--length", "40 h", "--replications", "60", "--verbose"];

  it.runIf(isLong)("gives the same bytes for any number of jobs, and uses both of two workers", async () => {
    const alone = await call("run", two, "--out", "alone", "--jobs", "1", ...long);
    const shared = callBuilt("run", two, "--out", "shared", "--jobs", "2", ...long);
    expect({ code: shared.code, output: shared.output }).toEqual({ code: 0, output: alone.output });
    expect(bytesOf("shared")).toEqual(bytesOf("alone"));
    expect(alone.errors).toContain("all work in one thread");
    expect(shared.errors).toMatch(/2 workers did [1-9]\d* \+ [1-9]\d* tasks/);
  });

  const crew = fileOf("crew.yaml", shippedText("one-operator"));

  it.runIf(isLong)("gives the same bytes for any number of jobs where leading steps are run again", async () => {
    const brief = ["--length", "40 h", "--replications", "16"];
    const alone = await call("run", crew, "--out", "crew alone", "--jobs", "1", ...brief);
    const shared = callBuilt("run", crew, "--out", "crew shared", "--jobs", "3", ...brief);
    expect(shared.output).toBe(alone.output);
    expect(bytesOf("crew shared")).toEqual(bytesOf("crew alone"));
  });

  it("runs no leading step again with --sensitivity off, and answers the same", async () => {
    const brief = ["--length", "2 h", "--replications", "4", "--changes", "off"];
    const on = await call("run", crew, "--out", "crew on", ...brief);
    const off = await call("run", crew, "--out", "crew off", "--sensitivity", "off", ...brief);
    expect(off.output).toBe(on.output);
    const rows = parse<Record<string, string>>(bytesOf("crew off")["bottleneck.csv"]!, { columns: true });
    expect(rows.every(({ elasticity }) => elasticity === "")).toBe(true);
    expect(rows.map((row) => row["elasticity_method"])).toContain("none: sensitivity is off");
  });

  it("stays in one thread for little work, with any --jobs", () => {
    const { errors } = callBuilt("run", two, "--out", "little", "--jobs", "2", "--verbose");
    expect(errors).toContain("all work in one thread");
  });

  it.each([
    ["--replications", "abc"],
    ["--replications", "0"],
    ["--length", "7,5 s"],
    ["--length", ""],
    ["--precision", "twice"],
    ["--seed", " "],
    ["--jobs", "many"],
  ])("reports the option with a wrong value: %s %j", async (option, value) => {
    const { code, errors } = await call("run", two, "--set", "title=A title", option, value);
    expect(code).toBe(2);
    expect(errors).toMatch(new RegExp(`^${option}: error: .+\\n(?: {4}.+\\n)* {4}remedy {4}`));
    expect(errors).not.toContain("This is");
    expect(errors).not.toContain("--set");
  });

  it.each(["0", "x", "1.5", "-1", "9999"])("refuses --jobs %s", async (jobs) => {
    const { code, errors } = await call("run", two, "--out", "jobs", "--jobs", jobs);
    expect(code).toBe(2);
    expect(errors).toMatch(/^--jobs: error: .* \[(?:not-whole|out-of-range)\]$/m);
  });
});

describe("a wanted precision", () => {
  const halfShare = (out: string): number => {
    const rows: readonly Readonly<Record<string, string>>[] = parse(bytesOf(out)["throughput.csv"] ?? "", {
      columns: true,
    });
    const row = rows.find((each) => each["resource"] === "cell" && each["measure"] === "good parts per hour");
    return Number(row?.["half_width_95"]) / Number(row?.["mean"]);
  };

  it("is reached by more replications", async () => {
    const { code, output } = await call("run", two, "--out", "precise", "--replications", "5", "--precision", "0.05 %");
    expect(code).toBe(0);
    expect(halfShare("precise")).toBeLessThanOrEqual(0.0005);
    const made = Number(/^(\d+) replications/m.exec(output)?.[1]);
    expect(made).toBeGreaterThan(5);
  });

  it("takes at least 10 replications, because the interval of 2 covers too little", async () => {
    const { output } = await call("run", two, "--out", "few", "--replications", "2", "--precision", "50 %");
    expect(output).toContain("10 replications of");
  });

  it("aims at the difference in a comparison, which common random numbers make precise", async () => {
    const wanted = ["--replications", "3", "--precision", "0.1 %"];
    const { code, output } = await call(
      "compare",
      two,
      "--variant",
      "slower: valve.shift=0.31 s",
      "--out",
      "pair",
      ...wanted,
    );
    expect(code).toBe(0);
    const rows: readonly Readonly<Record<string, string>>[] = parse(bytesOf("pair")["comparison.csv"] ?? "", {
      columns: true,
    });
    const row = rows.find((each) => each["resource"] === "cell" && each["measure"] === "good parts per hour");
    const made = Number(/^(\d+) replications/m.exec(output)?.[1]);
    expect(made).toBeGreaterThanOrEqual(10);
    expect(row?.["pairs"]).toBe(String(made));
    expect(Number(row?.["simultaneous_half_width_95"])).toBeLessThanOrEqual(0.001 * 1183);
  });

  // With all 2,000 replications, which are the most.
  it.runIf(isLong)("exits with 3 when it is not reached", async () => {
    const out = ["--out", "vague", "--length", "1 h", "--precision", "0.00001 %"];
    const { code } = await call("run", two, ...out);
    expect(code).toBe(3);
    expect(halfShare("vague")).toBeGreaterThan(0.000001);
  });
});

const resultSchema: unknown = JSON.parse((await call("schema", "--result")).output);

describe("--json", () => {
  const holds = new Ajv({ strict: false }).compile(resultSchema as object);

  it.each([
    ["check", one],
    ["run", two],
    ["compare", one, two],
  ])("%s prints only one document, which conforms to its schema", async (...args) => {
    const { code, output } = await call(
      ...args,
      "--json",
      ...(args[0] === "check" ? [] : ["--out", `json-${args[0]}`]),
    );
    expect(code).toBe(0);
    const document: unknown = JSON.parse(output);
    expect(holds(document), JSON.stringify(holds.errors)).toBe(true);
    expect(holds({ ...(document as object), tables: { throughput: [{}] } })).toBe(false);
  });
});

describe("datapackage.json", () => {
  it("lists every CSV file beside it and all its columns", async () => {
    await call("compare", one, two, "--out", "described");
    const files = bytesOf("described");
    const description = JSON.parse(files["datapackage.json"] ?? "") as {
      resources: { path: string; schema: { fields: { name: string }[] } }[];
    };
    const csv = Object.keys(files).filter((name) => name.endsWith(".csv"));
    expect(description.resources.map((each) => each.path).toSorted()).toEqual(csv.toSorted());
    for (const { path: name, schema } of description.resources)
      expect(files[name]?.split("\r\n", 1)[0]).toBe(schema.fields.map((field) => field.name).join(","));
  });
});
