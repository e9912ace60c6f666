// Turns the cells of a row into its time, its names and its duration by the roles of the columns.
import type { LogColumn, LogColumns, LogRole } from "./logColumns.ts";
import { kindOf, type Problems, type StepRecord } from "./logRecord.ts";
import { decimalMark, durationOf, numberOf, secondsOf, type DecimalMark } from "./logNumbers.ts";
import { timeFormat, type Instant, type TimeFormat, type Zone } from "./logTimes.ts";

export interface RowReader {
  readonly text: (role: LogRole) => string;
  readonly duration: () => number | undefined;
  readonly instant: (role: "start" | "end" | "time") => Instant | undefined;
}

/** How the columns were understood, for the reader of the answer. */
export interface Understood {
  readonly readerOf: (cells: readonly string[], line: number) => RowReader;
  readonly words: readonly string[];
  readonly has: (role: LogRole) => boolean;
  readonly kindOf: (words: string) => StepRecord["kind"];
  /** Whether the row lies after all that were read: its text may come again on the next day, or in an hour that comes twice. */
  readonly isAhead: (cells: readonly string[]) => boolean;
}

interface Hints {
  readonly delimiter: string;
  readonly zone?: Zone | undefined;
  /** Names of steps or states that are stops, or that are steps although they look like a stop or a wait. */
  readonly stops?: readonly string[];
  readonly steps?: readonly string[];
}

export function understand(
  found: LogColumns,
  samples: readonly (readonly string[])[],
  problems: Problems,
  hints: Hints,
): Understood {
  const columns = timesThatAreDurations(found, samples, hints.delimiter);
  const cellsOf = (column: LogColumn): readonly string[] =>
    samples.map((cells) => cells[column.index] ?? "").filter((cell) => cell !== "");
  const markOf = (column: LogColumn): DecimalMark => decimalMark(cellsOf(column), hints.delimiter);
  const { duration, date } = columns;
  const mark = duration ? markOf(duration) : ".";
  const unit = duration?.unit === undefined ? undefined : secondsOf(duration.unit);
  const timeCells = (column: LogColumn, cells: readonly string[]): string =>
    date === undefined ? (cells[column.index] ?? "") : `${cells[date.index] ?? ""} ${cells[column.index] ?? ""}`.trim();
  const formats = new Map<LogRole, TimeFormat>();
  for (const role of ["start", "end", "time"] as const) {
    const column = columns[role];
    if (!column) continue;
    const texts = samples.map((cells) => timeCells(column, cells)).filter((text) => text !== "");
    const { zone } = hints;
    const format = timeFormat(texts, {
      mark: markOf(column),
      zone,
      ...(column.unit === undefined ? {} : { unit: column.unit }),
    });
    if (format) formats.set(role, format);
  }
  const roles = Object.entries(columns).map(([role, { name }]) => `${role} = "${name}"`);
  const unitWords = duration ? [`durations in ${unit === undefined ? "s (no unit is given)" : duration.unit!}`] : [];
  const words = [
    roles.join(", "),
    [...unitWords, ...new Set([...formats.values()].map((format) => format.words))].join(", "),
  ];
  const [stops, steps] = [hints.stops ?? [], hints.steps ?? []].map((names) =>
    names.map((name) => name.trim().toLowerCase()),
  ) as [string[], string[]];
  const latest = new Map<LogRole, number>();
  return {
    isAhead: (cells) =>
      [...formats].some(([role, { read }]) => {
        const seconds = read(timeCells(columns[role]!, cells), true)?.seconds;
        return seconds !== undefined && seconds > (latest.get(role) ?? -Infinity);
      }),
    kindOf: (name) => kindOf(name, { stops, steps }),
    words: words.filter((each) => each !== ""),
    has: (role) => columns[role] !== undefined,
    readerOf: (cells, line) => ({
      text: (role) => cells[columns[role]?.index ?? -1] ?? "",
      duration: () => {
        const cell = cells[duration?.index ?? -1] ?? "";
        if (cell === "") return problems.add("empty duration", line);
        const seconds = durationOf(cell, mark, unit ?? 1);
        if (seconds === undefined) return problems.add("unreadable duration", line, cell);
        return seconds > 0 ? seconds : problems.add("duration not above 0", line, cell);
      },
      instant: (role) => {
        const column = columns[role];
        const cell = column === undefined ? "" : timeCells(column, cells);
        if (cell === "") return problems.add("empty time", line);
        const instant = formats.get(role)?.read(cell);
        if (instant === undefined) return problems.add("unreadable time", line, cell);
        latest.set(role, Math.max(instant.seconds, latest.get(role) ?? -Infinity));
        if (instant.clash === "twice") problems.add("local hour that comes twice", line, cell);
        if (instant.clash === "never") problems.add("local time that does not exist", line, cell);
        return instant;
      },
    }),
  };
}

/** A column `time` of numbers that go up and down at a station holds durations if no other column does. */
function timesThatAreDurations(
  columns: LogColumns,
  samples: readonly (readonly string[])[],
  delimiter: string,
): LogColumns {
  const { time, duration, start, end, ...rest } = columns;
  if (time === undefined || duration !== undefined || start !== undefined || end !== undefined) return columns;
  const rows = samples.filter((row) => (row[time.index] ?? "") !== "");
  const cells = rows.map((row) => row[time.index]!);
  const mark = decimalMark(cells, delimiter);
  const values = cells.map((cell) => numberOf(cell, mark));
  const known = values.filter((value) => value !== undefined);
  if (known.length < values.length) return columns;
  const stations = rows.map((row) => row[columns.station?.index ?? -1] ?? "");
  return isInOrder(known, stations) ? columns : { ...rest, duration: time };
}

/** So many numbers that only fall are the times of a log with the newest row first. */
const fewestFalls = 10;

function isInOrder(values: readonly number[], stations: readonly string[]): boolean {
  const latest = new Map<string, number>();
  let [rises, falls] = [0, 0];
  values.forEach((value, i) => {
    const before = latest.get(stations[i]!) ?? value;
    latest.set(stations[i]!, value);
    if (value > before) rises += 1;
    if (value < before) falls += 1;
  });
  return falls === 0 || (rises === 0 && falls >= fewestFalls);
}
