// Holds the charts of a report to their inputs: letters, gains, lost parts, costs, limits, cycle times, cut bars and gray print.
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { isOpenTo, stateNames, type StateKind } from "#cell/words/stateNames.ts";
import { stateMeanings } from "#cell/words/stateMeanings.ts";
import { cycleChart } from "#report/charts/cycleChart.ts";
import { gainBars, lostBars, type EffectRow } from "#report/charts/gainBars.ts";
import { limitBars } from "#report/charts/limitBars.ts";
import { timingChart } from "#report/charts/timingChart.ts";
import { pageStyle } from "#report/page/pageStyle.ts";
import { reportPage } from "#report/page/reportPage.ts";
import { limitRows } from "#report/page/windowSection.ts";
import { toCsv } from "#report/tables/csv.ts";
import { costTables } from "#report/tables/costTable.ts";
import { countedTimes } from "../../support/countedTimes.ts";
import { cycleBins } from "#report/tables/cycleBins.ts";
import { legendName, legendPlace, looksIn, stateLook } from "#report/words/stateLook.ts";
import { runReport } from "../../support/reported.ts";

const words = { id: "chart", title: "Chart", description: "A chart" };

/** Names, fills and remarks of a list of bars. */
function barsOf(code: string): readonly (readonly string[])[] {
  const rows = code.split(/<li[ >]/u).slice(2);
  return rows.map((row) => [
    /class="name">([^<]*)/u.exec(row)?.[1] ?? "",
    /class="box ([\w-]+)/u.exec(row)?.[1] ?? "",
    /<\/svg><span>([^<]*)/u.exec(row)?.[1] ?? "",
  ]);
}

describe("the letters of states", () => {
  const kindOf = (state: string): StateKind => stateMeanings[state as keyof typeof stateMeanings].kind;
  const known = Object.values(stateNames).filter((state) => !["stopped", "on shift", "off shift"].includes(state));

  it("are the same for two states only where the legend has one entry for both", () => {
    const labels = new Map<string, Set<string>>();
    for (const state of known) {
      const { letter } = stateLook(state, kindOf(state));
      labels.set(letter, (labels.get(letter) ?? new Set()).add(legendName(state)));
    }
    expect([...labels].filter(([, names]) => names.size > 1)).toEqual([]);
  });

  it("number the steps that the user named", () => {
    const shown = ["trim", "cooling", "label", "trim"].map((state) => ({ state, kind: "working" as const }));
    expect(shown.map(looksIn(shown)).map(({ letter }) => letter)).toEqual(["1", "K", "2", "1"]);
  });

  it("have a place in every legend, work before waits", () => {
    expect(legendPlace("opening", "working")).toBeLessThan(legendPlace("trim", "working"));
    expect(legendPlace("trim", "working")).toBeLessThan(legendPlace("awaiting melt", "waiting"));
    expect(isOpenTo("open to left") && legendPlace("open to left", "working")).toBe(
      legendPlace("delivering", "working"),
    );
  });

  it("are orange only where a wait holds parts back: not for a starved mask, a free operator, or a screw that is ahead", () => {
    const fills = ["starved", "free", "neutral", "holding a full shot", "awaiting melt", "blocked"].map(
      (state) => stateLook(state, "waiting").fill,
    );
    expect(fills).toEqual(["rest", "rest", "rest", "rest", "wait", "wait"]);
  });
});

const effects: readonly EffectRow[] = [
  { label: "cooling −5 %", value: 31.4, halfWidth: 0.5, note: "+2.6 %" },
  { label: "screw +10 %", value: 0.2, halfWidth: 0.4, note: "" },
  { label: "walk half", value: -3, halfWidth: null, note: "" },
];

describe("bars of gains and of lost parts", () => {
  it("name each change, its gain with interval, and what is not seen", () => {
    expect(barsOf(gainBars(effects, "good parts an hour", words).code)).toEqual([
      ["cooling −5 %", "good", "+31.4 ± 0.5, +2.6 %"],
      ["screw +10 %", "off", "+0.2 ± 0.4, no difference seen"],
      ["walk half", "poor", "−3"],
    ]);
  });

  it("have the opposite fills for lost parts", () => {
    expect(barsOf(lostBars(effects, "good parts", words).code).map(([, fill]) => fill)).toEqual([
      "poor",
      "off",
      "good",
    ]);
  });

  it("begin at zero, in proportion: half the value, half the length", () => {
    const rows = [40, 20, -10].map((value) => ({ label: `${value}`, value, halfWidth: null, note: "" }));
    const boxes = Array.from(
      gainBars(rows, "", words).code.matchAll(/<rect x="([\d.]+)%" width="([\d.]+)%" height="18" class="box/gu),
      ([, x, width]) => [Number(x), Number(width)],
    );
    // From −10 to 40: zero lies at a fifth.
    expect(boxes).toEqual([
      [20, 80],
      [20, 40],
      [0, 20],
    ]);
  });
});

describe("the cost chart", () => {
  it("has every item with credits and adds up to the cost of the headline", () => {
    const report = runReport("cost-of-a-thousand", ["run.replications=2", "run.length=1 h"]);
    const { study } = report.scenarios[0]!;
    const html = reportPage(report);
    const bars = barsOf(html.slice(html.indexOf('<ul class="bars" id="scenario-1-cost-chart"')).split("</ul>")[0]!);
    const amounts = bars.map(([, , remark = ""]) => Number(remark.split(" ")[0]!.replace("−", "-").replace(",", "")));
    const total = amounts.at(-1)!;
    expect(bars.map(([name]) => name)).toContain("surplus regrind (credit)");
    const rows: string[][] = parse(toCsv(costTables([study])[0]!), { from: 2 });
    // The total is rounded more than the items.
    const exact = Number(rows.at(-1)![5]);
    expect(amounts.slice(0, -1).reduce((sum, each) => sum + each, 0)).toBeCloseTo(exact, 1);
    expect(total).toBeCloseTo(exact, 1);
    expect(html).toContain(`Cost: ${total}`);
  });
});

describe("hang, sag and time at heat against their limits", () => {
  const { study } = runReport("rigid-pvc").scenarios[0]!;
  const rows = limitRows(study.spreads, "si");

  it("have the quantiles and the limit of the run", () => {
    const heat = rows.find(({ quantity }) => quantity === "time at heat")!;
    // The station whose shots come closest to the limit is first.
    const [spread] = study.spreads
      .filter(({ quantity }) => quantity === "time at heat")
      .toSorted((one, other) => other.quantiles.p95 - one.quantiles.p95);
    expect([heat.median, heat.p95, heat.limit]).toEqual([spread!.quantiles.p50, spread!.quantiles.p95, spread!.limit]);
    expect(heat.remark).toMatch(/^median 14\.2 min, largest 14\.2 min; limit 10 min, above it in 100 % of the shots$/u);
  });

  it("are drawn in a warning fill beyond the limit only", () => {
    const fills = barsOf(limitBars(rows, words).code).map(([name = "", fill]) => [name.split(",")[0], fill]);
    expect(fills).toContainEqual(["time at heat", "poor"]);
    expect(fills).toContainEqual(["hang time", "good"]);
    expect(fills.filter(([name, fill]) => name !== "time at heat" && fill === "poor")).toEqual([]);
  });
});

describe("the chart of cycle times", () => {
  const cyclesOf = (values: readonly number[]) => {
    const seconds = Float64Array.from(values).toSorted();
    const at = (share: number): number => seconds[Math.floor(share * (seconds.length - 1))]!;
    const spread = { p05: at(0.05), p25: at(0.25), p50: at(0.5), p75: at(0.75), p95: at(0.95) };
    return [{ station: "left", times: countedTimes(values), spread }];
  };

  it("has an axis over 99 % of the cycles and counts those beyond", () => {
    const cycles = cyclesOf([1, 2, ...Array.from({ length: 996 }, (_, i) => 12 + (i % 100) / 100), 30_000, 40_000]);
    const bins = cycleBins(cycles);
    const shown = bins.filter(({ isBeyond }) => !isBeyond);
    expect([shown[0]!.from, shown.at(-1)!.to]).toEqual([12, 13]);
    expect(bins.filter(({ isBeyond }) => isBeyond).map(({ count }) => count)).toEqual([2, 2]);
    expect(cycleChart(cycles, bins, words).code).toContain("4 cycles beyond, up to 11 h");
  });

  it("draws constant cycles as a line", () => {
    const cycles = cyclesOf(Array.from({ length: 500 }, () => 12.5));
    const { code } = cycleChart(cycles, cycleBins(cycles), words);
    expect(code).toContain('class="constant"');
    expect(code).toContain("always 12.50 s");
    expect(code).not.toContain('class="bin"');
  });
});

describe("the timing chart", () => {
  const timeline = runReport("two-station").scenarios[0]!.shots.timeline!;
  const { code } = timingChart(timeline, words).picture;

  it("gives no duration for a bar that its edge cuts", () => {
    const titles = Array.from(code.matchAll(/<title>([^<]*)<\/title>/gu), (match) => match[1]!);
    expect(titles).toHaveLength(timeline.intervals.length);
    timeline.intervals.forEach(({ isCut, state }, i) => {
      const [what = ""] = titles[i]!.split(", from");
      expect([what.endsWith(" s"), titles[i]!.endsWith("cut off by the edge of the chart")]).toEqual([!isCut, isCut]);
      expect(what).toContain(state);
    });
  });

  it("has the names of its rows in a layer of their own, once each", () => {
    const layer = code.slice(code.indexOf('class="names"'));
    const names = Array.from(layer.matchAll(/class="name">([^<]*)/gu), (match) => match[1]);
    expect(names).toEqual(["screw", "valve", "left", "right"]);
    expect(code.match(/class="name"/gu)).toHaveLength(names.length);
  });
});

describe("the colors", () => {
  /** Relative luminance of sRGB: WCAG 2.2, definition of relative luminance [M]. */
  function luminance(hex: string): number {
    const [red = 0, green = 0, blue = 0] = [1, 3, 5]
      .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
      .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  }
  const contrast = (one: number, other: number): number =>
    (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
  const palettes = Array.from(pageStyle.matchAll(/:root\{([^}]*)\}/gu), (match) => match[1]!);
  const colorOf = (palette: string, name: string): number => {
    const hex = new RegExp(`--${name}:(#[0-9a-f]{3,6})`, "u").exec(palette)![1]!;
    return luminance(hex.length === 4 ? hex.replaceAll(/[^#]/gu, "$&$&") : hex);
  };

  it.each(palettes.map((palette, i) => [i, palette] as const))("of palette %i differ in gray", (_, palette) => {
    const hues = ["blue", "green", "amber"].map((name) => colorOf(palette, name)).toSorted((one, other) => one - other);
    expect(contrast(hues[0]!, hues[1]!)).toBeGreaterThan(1.5);
    expect(contrast(hues[1]!, hues[2]!)).toBeGreaterThan(1.3);
    // Words on the hues: WCAG 2.2, success criterion 1.4.3, 4.5 to 1 [M].
    for (const hue of ["blue", "green"])
      expect(contrast(colorOf(palette, hue), colorOf(palette, "on"))).toBeGreaterThan(4.5);
    expect(contrast(colorOf(palette, "amber"), colorOf(palette, "onamber"))).toBeGreaterThan(4.5);
  });
});
