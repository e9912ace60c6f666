// Holds the calendar of a report to hours calculated by hand from the scenario [C], and its chart to its table.
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { calendarStudy, type CalendarStudy } from "#analysis/study/calendarStudy.ts";
import type { Study } from "#analysis/study/study.ts";
import { planTable, spokenDays } from "#report/tables/calendarPlan.ts";
import { calendarRows, piecesOf } from "#report/charts/calendar/calendarRows.ts";
import { calendarTables } from "#report/tables/calendarTable.ts";
import { toCsv } from "#report/tables/csv.ts";
import { reportPage } from "#report/page/reportPage.ts";
import { scenarioOf, shippedText, studyOf, runReport } from "../../support/reported.ts";

const week = runReport("two-shifts-one-color", [
  "run.replications=2",
  "run.length=7 d",
  "delivery.plasticatingRate=110 kg/h",
]);
const { study } = week.scenarios[0]!;
const page = reportPage(week);
const rows: Record<string, string>[] = parse(toCsv(calendarTables([study])[0]!), { columns: true });
const column = (name: string): readonly number[] => rows.map((row) => Number(row[name]));
const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0);

describe("the days of a week of two shifts", () => {
  it("are eight: Sunday has 23 h because of the clock change, and the last hour of the run is on Monday", () => {
    expect(rows.map(({ weekday }) => weekday)).toEqual(["mon", "tue", "wed", "thu", "fri", "sat", "sun", "mon"]);
    expect(column("day_h")).toEqual([24, 24, 24, 24, 24, 24, 23, 1]);
    expect(rows.map(({ date }) => date?.slice(-2))).toEqual(["23", "24", "25", "26", "27", "28", "29", "30"]);
  });

  it("have 16 h of shift and 1 h of breaks on five days", () => {
    expect(column("shift_s")).toEqual([...Array.from({ length: 5 }, () => 57_600), 0, 0, 0]);
    expect(column("break_s")).toEqual([...Array.from({ length: 5 }, () => 3600), 0, 0, 0]);
  });

  it("have 45 min of heating and 3 kg at 110 kg/h of purging as start-up every morning", () => {
    for (const seconds of column("start_up_s").slice(0, 5)) expect(seconds).toBeCloseTo(45 * 60 + (3 / 110) * 3600, 6);
    expect(column("start_up_s").slice(5)).toEqual([0, 0, 0]);
  });

  it("have the changeover only on Wednesday: 25 min and the purge, at most an hour", () => {
    const lost = column("changeover_s");
    expect(lost.filter((seconds) => seconds > 0)).toHaveLength(1);
    expect(lost[2]).toBeGreaterThan(25 * 60);
    expect(lost[2]).toBeLessThan(3600);
  });

  it("are the sum of the times of a station", () => {
    const uses = ["working_s", "waiting_s", "stopped_s", "start_up_s", "changeover_s", "off_s"];
    rows.forEach((row, i) =>
      expect(sum(uses.map((use) => Number(row[use])))).toBeCloseTo(column("day_h")[i]! * 3600, 4),
    );
  });

  it("add up to the good parts of the run", () => {
    const perHour = study.measures.find(
      ({ resource, measure }) => resource === "cell" && measure === "good parts per hour",
    )!;
    expect(sum(column("good_parts"))).toBeCloseTo(perHour.interval.mean * 168, 4);
  });

  it("have the same time off as the shares of time by state", () => {
    const off = study.states.filter(({ resource, kind }) => resource.startsWith("side") && kind === "off");
    expect(sum(column("off_s")) / (168 * 3600)).toBeCloseTo(sum(off.map(({ share }) => share.mean)) / 2, 9);
  });
});

describe("the plan of a week", () => {
  it("lists shifts, breaks, clock change, start-up and change of color", () => {
    const lines = planTable(study).rows.map((row) => row.join(" | "));
    expect(lines).toEqual([
      "early | mon to fri | 06:00 | 14:00 | the cell works, with its operator",
      "break of early |  | 09:30 | 10:00 | 30 min; the cell runs on without operators",
      "late | mon to fri | 14:00 | 22:00 | the cell works, with its operator",
      "break of late |  | 18:00 | 18:30 | 30 min; the cell runs on without operators",
      "clocks go forward | sun 2026-03-29 | 02:00 | 03:00 | the day has 23 h",
      "start-up | after a rest of 6 h or more |  |  | 45 min of heating up, then 3 kg of melt purged, then rejects from 5 cycles of each station",
      expect.stringMatching(
        /^change of color: to blue \| wed 2026-03-25 \| 10:00 \|  \| 25 min of work on average, then [\d.]+ kg purged until under 0\.1 % is old$/u,
      ),
    ]);
  });

  it("writes days as ranges or lists", () => {
    expect(spokenDays()).toBe("every day");
    expect(spokenDays(["fri", "mon", "tue", "wed", "thu"])).toBe("mon to fri");
    expect(spokenDays(["sat", "sun"])).toBe("sat, sun");
    expect(spokenDays(["mon", "wed", "thu"])).toBe("mon, wed, thu");
  });

  it("lists changes without shifts by their time from the start of the run", () => {
    const change = {
      name: "next mold",
      kind: "mold",
      station: "left",
      at: 5400,
      time: { kind: "fixed", value: 1200 },
    } as const;
    const scenario = { ...scenarioOf(shippedText("one-station"), "one"), changes: [change] };
    const changed = { scenario, calendar: calendarStudy(scenario, []) };
    expect(planTable(changed).rows).toEqual([
      ["change of mold at left: next mold", "90 min after the start of the run", "", "", "20 min of work on average"],
    ]);
    const plain = studyOf(scenarioOf(shippedText("one-station"), "one"));
    expect([plain.calendar, calendarTables([plain])]).toEqual([null, []]);
  });
});

describe("the chart of a calendar", () => {
  const shown = calendarRows(study.calendar!);

  it("has a row for each day in wall time, with a skipped hour left empty", () => {
    expect([shown.unit, shown.rows.length]).toEqual(["day", 8]);
    const sunday = shown.rows[6]!;
    expect(sunday.note).toBe("23 h: clocks forward");
    expect(piecesOf({ from: 0, until: Infinity }, sunday)).toEqual([
      { from: 0, to: 7200 },
      { from: 10_800, to: 86_400 },
    ]);
    expect(shown.rows[7]!.note).toBe("1 h observed");
  });

  it("is on the page with title, description and both tables", () => {
    for (const part of ["scenario-1-calendar-chart-title", "scenario-1-calendar-numbers", "scenario-1-plan-numbers"])
      expect(page).toContain(`id="${part}"`);
    expect(page).toMatch(
      /The cell is off 52 % of the time; of the remaining time a station spends: working 9\d\.\d %, .*start-up 4\.\d %/u,
    );
    expect(page).toContain("in replication 1");
    expect(page).toMatch(/from mon 2026-03-23 06:\d\d:\d\d on/u);
  });
});

describe("a day on which the clocks go back", () => {
  const text = shippedText("two-shifts-one-color")
    .replace("from: 2026-03-23", "from: 2026-10-24")
    .replaceAll("[mon, tue, wed, thu, fri]", "[sat, sun]")
    .replace("on: 2026-03-25", "on: 2026-10-24")
    .replace('on: 2026-03-29, at: "02:00", by: 1 h', 'on: 2026-10-25, at: "03:00", by: -1 h');
  const autumn = studyOf(scenarioOf(text, "autumn", ["run.length=49 h", "run.replications=1"]));
  const { rows: days } = calendarRows(autumn.calendar!);

  it("has 25 h, and draws the repeated hour in the place of one hour", () => {
    expect(autumn.calendar!.days.map(({ seconds }) => seconds / 3600)).toEqual([24, 25]);
    const [, sunday] = days;
    expect(sunday!.note).toBe("25 h: clocks back");
    expect(piecesOf({ from: 0, until: Infinity }, sunday!)).toEqual([{ from: 0, to: 86_400 }]);
    // Hours 26 and 27 of the run are the first and the second hour from 02:00 to 03:00.
    expect(piecesOf({ from: 26 * 3600, until: 27 * 3600 }, sunday!)).toEqual([{ from: 7200, to: 9000 }]);
    expect(piecesOf({ from: 27 * 3600, until: 28 * 3600 }, sunday!)).toEqual([{ from: 9000, to: 10_800 }]);
  });

  it("has its shift from 06:00 to 22:00 in wall time", () => {
    const working = days.flatMap(({ steps }) => steps.filter(({ shares }) => shares[0]! > 0.05));
    expect(working.length).toBeGreaterThan(2 * 14 * 4);
    for (const { from, to } of working) {
      expect(from).toBeGreaterThanOrEqual(6 * 3600);
      expect(to).toBeLessThanOrEqual(22 * 3600 + 900);
    }
  });
});

describe("many days", () => {
  /** A study of `count` equal days from a Wednesday on. */
  const longStudy = (count: number): Study => {
    const first = Date.UTC(2026, 0, 7) / 86_400_000;
    const days = Array.from({ length: count }, (_, i) => ({ ...study.calendar!.days[0]!, day: first + i }));
    const quarters = days.flatMap(({ day }, i) =>
      Array.from({ length: 96 }, (_, q) => ({
        day,
        second: q * 900,
        from: i * 86_400 + q * 900,
        until: i * 86_400 + (q + 1) * 900,
        seconds: [q < 48 ? 900 : 0, 0, 0, 0, 0, q < 48 ? 0 : 900],
        good: 0,
      })),
    );
    const calendar: CalendarStudy = { days, quarters, changes: [] };
    return { ...study, calendar };
  };

  it("have a row for each week from Monday on, in steps of two hours", () => {
    const { unit, rows: weeks, left } = calendarRows(longStudy(15).calendar!);
    expect([unit, weeks.length, left]).toEqual(["week", 3, 0]);
    expect(weeks.map(({ label }) => label)).toEqual(["from 2026-01-05", "from 2026-01-12", "from 2026-01-19"]);
    expect(weeks[0]!.steps[0]).toMatchObject({ from: 2 * 86_400, to: 2 * 86_400 + 7200 });
    expect(weeks.map(({ steps }) => steps.length)).toEqual([5 * 12, 7 * 12, 3 * 12]);
  });

  it("beyond 53 weeks are only in the table, which the page states", () => {
    expect(calendarRows(longStudy(400).calendar!)).toMatchObject({ unit: "week", left: 5 });
    const reported = { ...week.scenarios[0]!, study: longStudy(400) };
    const html = reportPage({ ...week, scenarios: [reported] });
    expect(html).toContain("since 400 days do not fit");
    expect(html).toContain("The chart shows the first 53 weeks, the table all days.");
  });
});
