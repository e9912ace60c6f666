// The form for timing a cell by stopwatch: as text, as a page to print, and as CSV to type the readings into.
import { timedCycles, type FormRow, type StationForm } from "#analysis/match/timingForm.ts";
import { element, type Markup } from "#report/charts/markup.ts";
import { htmlPage } from "#report/page/htmlPage.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import type { Scenario } from "#scenario/scenario.ts";

export interface RecordForm {
  readonly scenario: Scenario;
  readonly stations: readonly StationForm[];
}

const cycles = Array.from({ length: timedCycles }, (_, i) => i + 1);

function recordFinding({ stations }: RecordForm): readonly string[] {
  const rows = Math.max(...stations.map((each) => each.rows.length));
  return [`Time ${timedCycles} cycles of each station: up to ${rows} readings a cycle, typed into record.csv.`];
}

/** One way of working a sentence. */
const recordAdvice: readonly string[] = [
  `Which cycles: ${timedCycles} in a row, after 20 min without a stop. If the cell stops, begin again.`,
  "Let one clock run through, for all stations at once; film the cell if you are alone. Never reset it.",
  "Write the reading at which each row begins, in seconds (754.2) or as h:mm:ss. It ends where the next one begins.",
  "A step: something of this station moves, or its timer runs.",
  "A wait: nothing of it moves, and what it needs is not there yet. Leave the row empty where there is no wait.",
  "The last row of a station is the beginning of one more cycle: it ends the last step.",
  "Steps below 1 s are too short for a stopwatch: read them from the log of the controller.",
  "Stay outside the guards; the cell runs as always while you time it.",
];

const mostStations = 2;

export function recordText(form: RecordForm, width: number): string {
  const sheets = differentSheets(form.stations);
  const shown = sheets.slice(0, mostStations);
  const rest = sheets.length - shown.length;
  return [
    ...recordFinding(form).flatMap((line) => wrappedLines(line, width)),
    "",
    ...recordAdvice.flatMap((line) => wrappedLines(line, width)),
    ...shown.flatMap(({ station, rows }) => [
      "",
      ...alignedLines([[station, "", "waits for"], ...rows.map(textRow)], [], width),
    ]),
    ...(rest > 0 ? ["", `${rest} more ${rest === 1 ? "station is" : "stations are"} in record.html.`] : []),
    "",
    "Then: blowcell fit record.csv, and blowcell match FILE record.csv.",
    "",
  ].join("\n");
}

/** Stations with the same rows share one. */
function differentSheets(stations: readonly StationForm[]): readonly StationForm[] {
  const sheets = new Map<string, StationForm>();
  for (const { station, rows } of stations) {
    const key = JSON.stringify(rows);
    const known = sheets.get(key)?.station;
    sheets.set(key, { station: known === undefined ? station : `${known}, ${station}`, rows });
  }
  return [...sheets.values()];
}

const textRow = ({ name, kind, cause }: FormRow): readonly string[] => [`  ${name}`, kind, cause];

/** A row a reading, in the order in which they are made at each station. */
export function recordCsv({ stations }: RecordForm): string {
  const lines = stations.flatMap(({ station, rows }) => [
    ...cycles.flatMap((cycle) => rows.map((row) => csvLine(cycle, station, row))),
    ...rows
      .filter(({ kind }) => kind === "step")
      .slice(0, 1)
      .map((row) => csvLine(timedCycles + 1, station, row)),
  ]);
  return ["cycle,station,step,cause,time_s", ...lines, ""].join("\r\n");
}

function csvLine(cycle: number, station: string, { name, cause }: FormRow): string {
  return [String(cycle), station, name, cause, ""].map(quoted).join(",");
}

const quoted = (text: string): string => (/[",\r\n]/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

export function recordPage(form: RecordForm, version: string): string {
  const { scenario, stations } = form;
  return htmlPage({
    version,
    title: `Record of ${scenario.title}`,
    questions: [],
    finding: [...recordFinding(form), ...recordAdvice],
    warnings: { warnings: [], unusual: [] },
    sections: stations.map(({ station, rows }, i) => ({
      id: `record-${i + 1}`,
      heading: station,
      body: [sheetOf(rows)],
    })),
  });
}

/** As wide as `12:34:56.7`, so that a reading can be written on paper. */
const room = "\u00A0".repeat(12);

/** A row a reading, a column a cycle. */
function sheetOf(rows: readonly FormRow[]): Markup {
  const head = ["begins", ...cycles.map(String), String(timedCycles + 1)];
  return element(
    "div",
    { class: "numbers" },
    element(
      "table",
      { border: "1" },
      element(
        "thead",
        {},
        element(
          "tr",
          {},
          head.map((name) => element("th", {}, name)),
        ),
      ),
      element(
        "tbody",
        {},
        rows.map(({ name, cause }) =>
          element(
            "tr",
            {},
            element("td", {}, cause === "" ? name : `${name}: ${cause}`),
            head.slice(1).map(() => element("td", { height: "32" }, room)),
          ),
        ),
      ),
    ),
  );
}
