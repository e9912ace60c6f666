// The command fit as a user calls it.
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { parse } from "csv-parse/sync";
import alea from "seedrandom/lib/alea.js";
import { describe, expect, it } from "vitest";
import { gamma } from "#analysis/fit/gammaFamily.ts";
import { exponential, lognormal } from "#analysis/fit/plainFamilies.ts";
import { cellText } from "../support/cellScenario.ts";
import { newFolder } from "./callBlowcell.ts";
import { callHere } from "./callHere.ts";

const folder = newFolder();
const inFolder = (...names: readonly string[]) => path.join(folder, ...names);
const call = (...args: readonly string[]) => callHere(["fit", ...args], { folder });

function write(name: string, text: string | Buffer): string {
  writeFileSync(inFolder(name), text);
  return name;
}

type Row = Readonly<Record<string, string>>;
const rowsOf = (out: string): readonly Row[] =>
  parse(readFileSync(inFolder(out, "fit.csv")), { columns: true }) as readonly Row[];
const suggested = (out: string) => rowsOf(out).filter((row) => row["suggested"] === "true");

const remove = gamma.sampler([0.85, 0.2], alea("remove"));
const steps = Array.from({ length: 200 }, (_, i) => [
  ["station 1", "cool", (7.5).toFixed(3)],
  ["station 1", "remove", (i === 17 ? -1 : remove()).toFixed(3)],
]).flat();
write("steps.csv", `station,step,duration_s\n${steps.map((row) => row.join(",")).join("\n")}\n`);

describe("a log of step times", () => {
  it("is answered in one screen, with a table, a page and one warning a problem", async () => {
    const { code, output, errors } = await call("steps.csv");
    expect(code).toBe(0);
    expect(output.split("\n")[0]).toBe("2 steps are fitted from 400 rows; 1 row is left out.");
    expect(output).toMatch(/^station 1 +cool +200 +7\.5 s +constant 7\.5 s$/mu);
    expect(output.split("\n").length).toBeLessThan(40);
    expect(errors).toContain("steps.csv:37:1: warning: 1 row: duration not above 0; left out. [log-rows]");
    expect(errors).toContain("fit.html and fit.csv are in reports/steps-fit");
    const [cool, removal] = suggested("reports/steps-fit");
    expect(cool).toMatchObject({ distribution: "constant", scenario_value: "7.5 s", count: "200" });
    expect(cool!["reason"]).toContain("a timer");
    const kind = removal!["distribution"]!;
    expect(removal!["scenario_value"]).toMatch(new RegExp(`^\\{ ${kind}: \\[`, "u"));
    expect(Number(removal!["low_1"])).toBeLessThan(Number(removal!["value_1"]));
    expect(Number(removal!["ad_p"])).toBeGreaterThan(0.05);
    const page = readFileSync(inFolder("reports/steps-fit/fit.html"), "utf8");
    expect(page.match(/<svg/gu)).toHaveLength(2);
    expect(page).not.toMatch(/NaN|Infinity|undefined/u);
  });

  it("gives the same bytes again", async () => {
    await call("steps.csv", "--out", "again");
    for (const name of ["fit.csv", "fit.html"])
      expect(readFileSync(inFolder("again", name))).toEqual(readFileSync(inFolder("reports/steps-fit", name)));
  });

  it("is printed as JSON and nothing else", async () => {
    const { output } = await call("steps.csv", "--json", "--out", "json");
    const result = JSON.parse(output) as {
      command: string;
      tables: { fit: readonly object[] };
      warnings: readonly object[];
    };
    expect(result.command).toBe("fit");
    expect(result.tables.fit.length).toBeGreaterThan(2);
    expect(result.warnings).toHaveLength(1);
  });

  it("never overwrites the fit of another log without --replace", async () => {
    write("other.csv", "station,step,duration_s\nA,cool,7\nA,cool,7\nA,cool,7\n");
    expect((await call("other.csv", "--out", "again")).errors).toContain("folder-other-run");
    expect((await call("other.csv", "--out", "again", "--replace")).code).toBe(0);
  });
});

describe("--into", () => {
  const scenario = cellText(1).replace(
    /^ {2}steps: .*$/mu,
    "  # Measured by stopwatch.\n  steps:\n    cool: 8 s # the timer\n    remove: { time: 0.8 s }\n    close: 0.6 s\n    blow: 0.5 s\n    vent: 0.5 s\n    open: 0.6 s",
  );

  it("writes a copy that keeps all other lines, and prints each change", async () => {
    write("mine.yaml", scenario);
    const log = steps.map(([, step, time]) => ["the mold", step, time].join(","));
    write("mine.csv", `station,step,duration_s\n${log.join("\n")}\n`);
    const { code, errors } = await call("mine.csv", "--into", "mine.yaml");
    expect(code).toBe(0);
    const [before, after] = [scenario, readFileSync(inFolder("mine-fitted.yaml"), "utf8")].map((text) =>
      text.split("\n"),
    );
    const changed = before!.flatMap((line, i) => (line === after![i] ? [] : [after![i]!.trim()]));
    expect(after).toHaveLength(before!.length);
    expect(changed).toHaveLength(2);
    expect(changed.find((line) => line.startsWith("cool:"))).toBe("cool: 7.5 s # the timer");
    expect(changed.find((line) => line.startsWith("remove:"))).toMatch(/^remove: \{ time: \{ \w+: \[.*s\] \} \}$/u);
    expect(errors).toMatch(/mine-fitted\.yaml:\d+: stations\..*\.steps\.cool: 8 s -> 7\.5 s/u);
    expect(readFileSync(inFolder("mine.yaml"), "utf8")).toBe(scenario);
    expect((await callHere(["check", "mine-fitted.yaml"], { folder })).code).toBe(0);
  });

  it("refuses to overwrite another file, and changes the scenario itself where --as names it", async () => {
    const again = await call("mine.csv", "--into", "mine.yaml");
    expect([again.code, again.errors]).toEqual([2, expect.stringContaining("fit-copy-exists")]);
    expect((await call("mine.csv", "--into", "mine.yaml", "--as", "mine.yaml")).code).toBe(0);
    expect(readFileSync(inFolder("mine.yaml"), "utf8")).toContain("cool: 7.5 s");
  });

  it("names the steps that the scenario does not have", async () => {
    write("weigh.csv", "station,step,duration_s\nA,weigh,7\nA,weigh,7\nA,weigh,7\nB,cool,9\nB,cool,9\nB,cool,9\n");
    const { errors } = await call("weigh.csv", "--into", "mine.yaml", "--as", "third.yaml");
    expect(errors).toMatch(
      /stations\.B\.steps\.cool: 7\.5 s -> 9 s.*fit-no-place.*found +stations\.A\.steps\.weigh$/msu,
    );
  });

  it("writes the time between and the repair of a stop with the same name", async () => {
    const stop =
      "stops:\n  - { name: heater band, resource: plasticator, between: 40 h, repair: 30 min, step: finish } # old\n";
    write("stops.yaml", `${scenario}${stop}`);
    const rows = Array.from(
      { length: 30 },
      (_, i) => `${i * 1000 + (i % 7) * 50},P,run\n${i * 1000 + 800},P,heater band`,
    );
    write("band.csv", `time_s,station,state\n${rows.join("\n")}\n40000,P,run\n`);
    expect((await call("band.csv", "--stop", "Heater band", "--into", "stops.yaml")).code).toBe(0);
    const text = readFileSync(inFolder("stops-fitted.yaml"), "utf8");
    expect(text).toMatch(/between: \{ \w+: [^}]*\}, repair: \{ \w+: [^}]*\}, step: finish \} # old\n/u);
  });

  it("writes the times of the screw and the valve where the scenario has them, and leaves equal values as they are", async () => {
    const text = cellText(2).replace("valve: { shift: 0.25 s", "valve: { shift: 0.250 s");
    expect(text).toContain("0.250 s");
    write("screw.yaml", text);
    const rows = Array.from({ length: 30 }, (_, i) => [
      ["plasticator", "recharge", 3 + (i % 7) / 10],
      ["plasticator", "drop", 1.5],
      ["valve", "shift to port", 0.25],
    ]).flat();
    write("screw.csv", `station,step,duration_s\n${rows.map((row) => row.join(",")).join("\n")}\n`);
    const { code, errors } = await call("screw.csv", "--into", "screw.yaml");
    expect([code, errors]).toEqual([0, expect.not.stringContaining("fit-no-place")]);
    const after = readFileSync(inFolder("screw-fitted.yaml"), "utf8");
    expect(after).toMatch(/recharge: \{ \w+: \[/u);
    expect(after).toMatch(/drop: 1\.5 s/u);
    expect(after).toContain("valve: { shift: 0.250 s");
    expect(errors).not.toContain("valve.shift");
  });

  it("refuses a scenario that cannot be read before the log is read", async () => {
    write("broken.yaml", "format: [");
    expect((await call("mine.csv", "--into", "broken.yaml")).code).toBe(2);
    expect((await call("mine.csv", "--into", "absent.yaml")).errors).toContain("file-missing");
  });
});

describe("a log of states", () => {
  it("has repairs and times between stops, of which the last is cut off", async () => {
    const [between, repair] = [exponential.sampler([3000], alea("up")), lognormal.sampler([400, 200], alea("down"))];
    const rows: string[] = [];
    let time = 0;
    for (let i = 0; i < 40; i++) {
      rows.push(`${time.toFixed(1)},screw,running`);
      time += between();
      rows.push(`${time.toFixed(1)},screw,stopped`);
      time += repair();
    }
    write(
      "states.csv",
      `time_s,station,state\n${rows.join("\n")}\n${time.toFixed(1)},screw,running\n${(time + 9e3).toFixed(1)},screw,stopped\n`,
    );
    const { code, output } = await call("states.csv");
    expect(code).toBe(0);
    expect(output).toMatch(/^1 step and 1 stop are fitted from 82 rows; 1 row is left out\./u);
    const found = suggested("reports/states-fit");
    expect(found.map(({ kind }) => kind)).toEqual(["step", "repair", "between"]);
    const stop = found.at(-1)!;
    expect([stop["count"], stop["censored"], stop["distribution"]]).toEqual(["39", "1", "exponential"]);
    expect(Number(stop["low_1"])).toBeLessThan(3000);
    expect(Number(stop["high_1"])).toBeGreaterThan(3000);
  });

  it("may be the events of a run", async () => {
    write("cell.yaml", cellText(2));
    await callHere(["run", "cell.yaml", "--events", "--out", "run", "--length", "30 min", "--quiet"], { folder });
    const { code } = await call(path.join("run", "events.csv"), "--out", "events-fit");
    expect(code).toBe(0);
    const cool = suggested("events-fit").find(({ step }) => step === "cool");
    expect(cool).toMatchObject({ kind: "step", scenario_value: "8 s" });
  });
});

describe("names that look like a wait", () => {
  const rows = Array.from({ length: 25 }, (_, i) => `A,cool,7.5\nA,wait for air,${1 + (i % 5) / 10}`);

  it("are named in the answer, and are steps with --step", async () => {
    write("air.csv", `station,step,duration_s\n${rows.join("\n")}\n`);
    const { output } = await call("air.csv");
    const words = output.replaceAll(/\s+/gu, " ");
    expect(words).toContain("25 waits are not fitted, since waits are results of the cell: wait for air.");
    expect(words).toContain("name it with --step");
    const again = await call("air.csv", "--step", "Wait for air", "--out", "air-step");
    expect(again.output).toMatch(/^A +wait for air +25 /mu);
  });
});

describe("an export of a spreadsheet", () => {
  it("may have semicolons, decimal commas, another encoding, dates and local times", async () => {
    const rows = Array.from(
      { length: 30 },
      (_, i) => `25.10.2026;01:${String(i).padStart(2, "0")}:00;Kühl;${7 + (i % 5) / 10}`,
    );
    const text = `Datum;Uhrzeit;Schritt;Dauer [s]\r\n${rows.join("\r\n").replaceAll(/(\d)\.(\d)$/gmu, "$1,$2")}\r\n`;
    write("windows.csv", Buffer.from(text, "latin1"));
    const { code, output } = await call("windows.csv", "--zone", "Europe/Berlin");
    expect([code, output]).toEqual([0, expect.stringContaining("text in windows-1252")]);
    expect(rowsOf("reports/windows-fit")[0]).toMatchObject({ step: "Kühl", mean: "7.2", station: "line" });
    write(
      "utf16.csv",
      Buffer.concat([Buffer.of(0xff, 0xfe), Buffer.from(`\uFEFFsep=;\r\n${text}`.slice(1), "utf16le")]),
    );
    expect((await call("utf16.csv")).code).toBe(0);
    expect(rowsOf("reports/utf16-fit")[0]).toMatchObject({ mean: "7.2" });
  });
});

describe("a log that cannot be read", () => {
  it.each([
    ["empty", "", "log-empty"],
    ["without useful columns", "a,b\n1,2\n", "log-columns"],
    [
      "of bytes that are no text",
      `${String.fromCodePoint(...Array.from({ length: 64 }, (_, i) => i))}\n`,
      "log-broken",
    ],
    ["with a header alone", "station,step,duration_s\n", "log-empty"],
    ["that is a workbook", "PK\u0003\u0004\u0014\u0000", "log-workbook"],
    ["with an open quote", 'station,step,duration_s\nA,cool,7\nA,"cool,8\n', "log-broken"],
    ["without a usable row", "station,step,duration_s\nA,cool,x\nA,open,\n", "log-empty"],
    [
      "with too many steps",
      `step,duration_s\n${Array.from({ length: 600 }, (_, i) => `part ${i},7`).join("\n")}\n`,
      "log-groups",
    ],
    [
      "with too many steps, before the rest is read",
      `step,duration_s\n${Array.from({ length: 60_000 }, (_, i) => `part ${i},7`).join("\n")}\n"open,8\n`,
      "log-groups",
    ],
  ])("%s is refused with its code, and nothing is written", async (_, text, code) => {
    write("bad.csv", text);
    const outcome = await call("bad.csv", "--out", "nothing");
    expect([outcome.code, outcome.output]).toEqual([2, ""]);
    expect(outcome.errors).toContain(`[${code}]`);
    expect(() => readFileSync(inFolder("nothing", "fit.csv"))).toThrow();
  });

  it("with too few times is answered so, with what to do", async () => {
    write("two.csv", "station,step,duration_s\nA,cool,7\nA,cool,8\n");
    const { code, output } = await call("two.csv", "--out", "two");
    expect(code).toBe(0);
    expect(output).toMatch(/^Nothing is fitted: no step has 3 times or more in 2 rows\./u);
    expect(output).toContain("log 20 or more of each step");
  });

  it("is listed with all its problems", async () => {
    write("bad.csv", "station,step,duration_s\nA,cool,x\nA,open,\n");
    const { errors } = await call("bad.csv");
    expect(errors).toContain("unreadable duration");
    expect(errors).toContain("empty duration");
  });

  it.each([
    [["gone.csv"], "file-missing"],
    [["."], "file-is-folder"],
    [["mine.yaml"], "log-scenario"],
    [["steps.csv", "--as", "copy.yaml"], "fit-no-target"],
    [["steps.csv", "--zone", "Mars"], "log-zone"],
    [["steps.csv", "--column", "duration=Zeit"], "log-column-option"],
  ])("%j is refused", async (args, code) => {
    const outcome = await call(...args, "--out", "refused");
    expect([outcome.code, outcome.errors]).toEqual([2, expect.stringContaining(`[${code}]`)]);
  });
});
