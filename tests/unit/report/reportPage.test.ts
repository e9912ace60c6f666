// Holds the report page to the CSV files of the same study, and to escaped texts.
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { comparisonTable } from "#report/tables/comparisonTable.ts";
import { element } from "#report/charts/markup.ts";
import { toCsv } from "#report/tables/csv.ts";
import type { ReportedScenario } from "#report/page/reported.ts";
import { reportPage } from "#report/page/reportPage.ts";
import { studyTables } from "#report/tables/studyTables.ts";
import { madeSentence } from "#report/words/madeWords.ts";
import type { Table } from "#report/tables/table.ts";
import { compareReport, reportedOf, runReport, scenarioOf, shippedText } from "../../support/reported.ts";

type ReportedIssue = ReportedScenario["issues"][number];

const input = compareReport(["one-station", "two-molds"]);
const page = reportPage(input);

/** Numbers of a table of the page, row by row, with all digits. */
function numbersOnPage(html: string, id: string): readonly (readonly string[])[] {
  const table = html.split(`<table id="${id}-numbers">`)[1]?.split("</table>")[0] ?? "";
  const rows = table.split("<tbody>")[1]?.split("<tr>").slice(1) ?? [];
  return rows.map((row) => Array.from(row.matchAll(/<data value="([^"]*)">/gu), (match) => match[1] ?? ""));
}

/** Numbers of a CSV file, read with csv-parse. */
function numbersInCsv(table: Table, scenario?: string): readonly (readonly string[])[] {
  const rows: string[][] = parse(toCsv(table), { from: 2 });
  const numeric = table.columns.flatMap(({ type }, i) => (type === "number" || type === "integer" ? [i] : []));
  return rows
    .filter((row) => scenario === undefined || row[0] === scenario)
    .map((row) => numeric.map((i) => row[i] ?? "").filter((cell) => cell !== ""));
}

describe("the tables of a report", () => {
  const tables = studyTables(input.scenarios.map(({ study }) => study));
  const shown = ["throughput", "time-by-state", "bottleneck", "circuits"];

  it.each(shown)("have exactly the numbers of %s.csv", (name) => {
    const table = tables.find((each) => each.name === name);
    if (!table) throw new Error(`no table ${name}`);
    input.scenarios.forEach(({ study }, i) => {
      const expected = numbersInCsv(table, study.scenario.name);
      expect(expected.length).toBeGreaterThan(1);
      expect(numbersOnPage(page, `scenario-${i + 1}-${name}`)).toEqual(expected);
    });
  });

  it("have the numbers of kpi.csv, cell and stations separately", () => {
    const table = tables.find((each) => each.name === "kpi")!;
    for (const part of ["cell", "stations"]) {
      const rows = table.rows.filter((row) => (row[1] === "cell") === (part === "cell"));
      const expected = numbersInCsv({ ...table, rows }, "two-molds");
      expect(expected.length).toBeGreaterThan(10);
      expect(numbersOnPage(page, `scenario-2-kpi-${part}`)).toEqual(expected);
    }
  });

  it("have the numbers of cost.csv when a scenario has costs, and no such section otherwise", () => {
    const withCosts = runReport("cost-of-a-thousand", ["run.replications=2", "run.length=1 h"]);
    const table = studyTables(withCosts.scenarios.map(({ study }) => study)).find(({ name }) => name === "cost")!;
    expect(numbersOnPage(reportPage(withCosts), "scenario-1-cost")).toEqual(numbersInCsv(table));
    expect(page).not.toContain("scenario-1-cost");
  });

  it("have exactly the numbers of comparison.csv", () => {
    const expected = numbersInCsv(comparisonTable(input.comparison));
    expect(expected.length).toBeGreaterThan(1);
    expect(numbersOnPage(page, "comparison")).toEqual(expected);
  });

  it("have each replication's good parts per hour", () => {
    const table = tables.find((each) => each.name === "replications");
    const rows = table?.rows.filter(
      (row) => row[0] === "two-molds" && row[2] === "cell" && row[3] === "good parts per hour",
    );
    const onPage = numbersOnPage(page, "scenario-2-replications").map((row) => row.map(Number));
    expect(rows).toHaveLength(4);
    onPage.forEach((row, i) => expect(row).toEqual([rows?.[i]?.[1], Number(Number(rows?.[i]?.[5]).toPrecision(10))]));
  });
});

describe("a report", () => {
  it("has the same bytes for the same study", () => {
    expect(reportPage(compareReport(["one-station", "two-molds"]))).toBe(page);
  });

  it("has its sections in reading order: answer, pace, cycles, states, window, cost, calendar, input, details", () => {
    const single = reportPage(runReport("cost-of-a-thousand", ["run.replications=2", "run.length=1 h"]));
    const sections = Array.from(single.matchAll(/<section id="scenario-1-([\w-]+)"/gu), (match) => match[1]);
    expect(sections).toEqual([
      "bottleneck",
      "timing",
      "states",
      "window",
      "cost",
      "input",
      "circuits",
      "cycles",
      "kpi",
      "throughput",
    ]);
    expect(single.indexOf('class="finding"')).toBeLessThan(single.indexOf("<section"));
  });

  it("has the first sentence of the terminal as its headline", () => {
    const { scenarios } = runReport("one-operator");
    expect(reportPage(runReport("one-operator"))).toContain(
      `<p class="finding">${madeSentence(scenarios[0]!.study)}</p>`,
    );
  });

  it("shows values outside the process window and warnings right below the answer, time at heat first", () => {
    const base = runReport("rigid-pvc", ["product.sagLimit=0.1 %"]);
    const issue = { code: "a", severity: "warning", path: "x", message: "Is odd.", remedy: "Mend it.", fate: "cell" };
    const reported = { ...base.scenarios[0]!, issues: [issue as ReportedIssue] };
    const html = reportPage({ ...base, scenarios: [reported] });
    const box = /class="finding">[^<]*<\/p><ul class="warnings">(.*?)<\/ul>/u.exec(html)?.[1] ?? "";
    const items = Array.from(box.matchAll(/<li>([^<,]*)/gu), (match) => match[1]);
    expect(items).toEqual([
      "Mean time at heat from hopper to die",
      "Time at heat",
      "Sag of the parison when the mold has closed",
      "Sag",
      "x: Is odd. Mend it.",
    ]);
    expect(reportPage(runReport("two-station"))).not.toContain('<ul class="warnings">');
  });

  it("never shows the unit 1/h", () => {
    expect(page).not.toContain("1/h");
    expect(page).toContain(">per hour<");
  });

  it("has a title and a description for every chart, and unique ids", () => {
    const charts = page.match(/<svg [^>]*role="img"/gu)?.length ?? 0;
    // Of each scenario cycles, states, cycle times and replications; then the layouts and the differences.
    expect(charts).toBe(2 * 4 + 2);
    expect(page.match(/<title id="[\w-]+">[^<]/gu)).toHaveLength(charts);
    expect(page.match(/<desc id="[\w-]+">[^<]/gu)).toHaveLength(charts);
    // What sets the pace, the window and the ideal cycle are lists of words with bars.
    expect(page.match(/<ul class="bars" id="[\w-]+" aria-label="[^"]+">/gu)).toHaveLength(2 * 3);
    const ids = Array.from(page.matchAll(/ id="([^"]*)"/gu), (match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("loads no resources and runs no scripts", () => {
    expect(page).not.toMatch(/<script|<link|<img|<iframe|@import|url\((?!#)|src=/u);
    expect(page).toContain("default-src &#39;none&#39;");
  });

  it.each(["NaN", "Infinity", "undefined", "[object"])("contains no %s", (fault) => {
    expect(page).not.toContain(fault);
    expect(reportPage(runReport("one-operator"))).not.toContain(fault);
  });

  it("shows keys as code, and in quotation marks where there is no markup", () => {
    expect(page).not.toContain("`");
    expect(page).toContain("(enter <code>stops</code>, <code>quality</code>)");
    expect(page).toMatch(/title="[^"]*“cell”/u);
    expect(element("svg", {}, element("text", {}, "side `a`")).code).toBe("<svg><text>side “a”</text></svg>");
  });

  it("escapes markup in titles, names, seeds, settings and texts", () => {
    const evil = `</title></svg><script>alert("1")</script><img src=x onerror='alert(1)'>&amp;`;
    const scenario = scenarioOf(shippedText("two-station"), "two");
    const stations = scenario.stations.map((station, i) => ({ ...station, name: `${evil}${i}` }));
    const poisoned = { ...scenario, name: evil, title: evil, stations, run: { ...scenario.run, seed: evil } };
    const issue = { code: "a", severity: "warning", path: evil, message: evil, remedy: evil, fate: "cell" } as const;
    const reported = { ...reportedOf(poisoned, evil), settings: [{ option: "--set", text: evil }], issues: [issue] };
    const html = reportPage({ version: "0", scenarios: [reported], comparison: [] });
    expect(html).not.toMatch(/<script|<img/u);
    expect(html).toContain("&lt;/title&gt;&lt;/svg&gt;&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt;");
    expect(html).toContain("&amp;amp;");
  });

  it("counts the rows outside the process window in singular or plural", () => {
    const sentences = [["two-station", "product.wall.thickest=1.4 mm"], ["two-station"]].map(([name, ...set]) => {
      const html = reportPage(runReport(name!, set));
      return /All computed values are inside their limits|\d+ (?:value is outside its|values are outside their) limits/u.exec(
        html,
      )?.[0];
    });
    expect(sentences).toEqual(["3 values are outside their limits", "All computed values are inside their limits"]);
  });

  it("lists shots beyond a limit, and unusual values marked as common practice", () => {
    const slow = "stations.*.steps.open=3 s";
    const set = ["product.parisonLength=300 mm", "product.sagLimit=0.1 %", "delivery.holdUp=1 kg", slow];
    const html = reportPage(runReport("two-station", set));
    expect(html).toMatch(/<li>Sag, left and right: above 0\.1 % in all of the shots/u);
    expect(html).toMatch(/<li>Unusual \(common practice, no published source\): .*close and open together/u);
    expect(html).toContain("time at heat of the run, p95");
  });

  it("states that only one replication was run", () => {
    const single = reportPage(runReport("one-station", ["run.replications=1"]));
    expect(single).toContain("one replication gives no interval");
    expect(single).not.toContain("NaN");
  });
});
