// Reads a log row by row: detects its columns, turns rows into steps, waits and stops, and counts what is wrong.
import type { Issue } from "#foundation/issue.ts";
import { issueOf, logColumns, logIssueCodes } from "./logColumns.ts";
import { problemCounter, type ProblemCount, type Problems, type StepRecord } from "./logRecord.ts";
import { understand, type RowReader, type Understood } from "./logRows.ts";
import { between, type Zone } from "./logTimes.ts";
import { stateRows } from "./stateRows.ts";

export interface LogOptions {
  /** Texts of the form `role=name of a column`. */
  readonly columns?: readonly string[];
  readonly delimiter: string;
  readonly zone?: Zone | undefined;
  /** Names of steps or states that are stops, beside those that say so. */
  readonly stops?: readonly string[];
  /** Names of steps that look like a stop or a wait. */
  readonly steps?: readonly string[];
}

export interface LogSummary {
  readonly rows: number;
  readonly problems: readonly ProblemCount[];
  readonly words: readonly string[];
  readonly issues: readonly Issue[];
}

export interface LogReader {
  /** The first row is the header. */
  readonly row: (cells: readonly string[], line: number) => void;
  readonly end: () => LogSummary;
}

/** Rows that decide what the columns hold. */
const sampleRows = 200;
/** A row that repeats one of so many rows before it is a duplicate. */
const mostRemembered = 10_000;
/**
 * A state that is longer than an hour, and so many times as long as it was on average before, is a gap in the log, unless it is a
 * stop. Common practice, no published source.
 */
const longestState = 3600;
const gapTimes = 20;
const fewStates = 5;

/** More rows that go back in time are no slip of a clock. */
const [fewBackward, mostBackward] = [5, 0.1];

export function logReader(take: (record: StepRecord) => void, options: LogOptions): LogReader {
  const problems = problemCounter();
  const sample: { readonly cells: readonly string[]; readonly line: number }[] = [];
  let found: ReturnType<typeof logColumns> | undefined;
  let columns: Understood | undefined;
  let rows: ReturnType<typeof rowTaker> | undefined;
  let count = 0;
  const begin = (): void => {
    if (rows !== undefined || found === undefined) return;
    columns = understand(
      found.columns,
      sample.map(({ cells }) => cells),
      problems,
      options,
    );
    rows = rowTaker(columns, problems, take);
    for (const { cells, line } of sample) rows.row(columns.readerOf(cells, line), cells, line);
    sample.length = 0;
  };
  return {
    row: (cells, line) => {
      if (found === undefined) {
        found = logColumns(cells, options.columns);
        // A row with a plain number is no header.
        if (!cells.some((cell) => /^\d+(?:[.,]\d+)?$/u.test(cell))) return;
      }
      if (found.issues.length > 0) return;
      count += 1;
      if (rows && columns) rows.row(columns.readerOf(cells, line), cells, line);
      else sample.push({ cells, line });
      if (sample.length >= sampleRows) begin();
    },
    end: () => {
      const issues = found?.issues ?? [issueOf("log-empty", "The log is empty.", "Check the file.")];
      if (issues.length === 0) begin();
      rows?.end();
      const counts = problems.counts();
      return {
        rows: count,
        problems: counts,
        words: columns?.words ?? [],
        issues: [...issues, ...disorder(counts, count)],
      };
    },
  };
}

function disorder(counts: readonly ProblemCount[], rows: number): readonly Issue[] {
  const isBackward = ({ problem }: ProblemCount): boolean =>
    problem === "time goes back" || problem === "earlier than the row before";
  const back = counts.filter(isBackward).reduce((sum, { count }) => sum + count, 0);
  if (back <= Math.max(fewBackward, mostBackward * rows)) return [];
  const message = `In ${back} of ${rows} rows time goes back.`;
  return [issueOf("log-order", message, logIssueCodes["log-order"][1])];
}

interface RowTaker {
  readonly row: (reader: RowReader, cells: readonly string[], line: number) => void;
  readonly end: () => void;
}

function rowTaker(columns: Understood, problems: Problems, take: (record: StepRecord) => void): RowTaker {
  const hasTimes = columns.has("time") || columns.has("start") || columns.has("end");
  const isRepeated = hasTimes ? repeats() : () => false;
  const isGap = columns.has("duration") ? () => false : gaps();
  const checked = (record: StepRecord): void => {
    if (isGap(record)) problems.add("gap in the log", record.line, `${Math.round(record.seconds)} s of ${record.step}`);
    else take(record);
  };
  const { row, end } =
    columns.has("duration") || (columns.has("start") && columns.has("end"))
      ? { row: stepRow(columns, problems, checked), end: () => undefined }
      : stateRows(columns, problems, checked);
  return {
    row: (reader, cells, line) => {
      if (isRepeated(cells.join("\u001F")) && !columns.isAhead(cells))
        problems.add("duplicate row", line, cells.join(","));
      else row(reader, line);
    },
    end,
  };
}

/** Whether the log stood still during a state. */
function gaps(): (record: StepRecord) => boolean {
  const known = new Map<string, { count: number; sum: number }>();
  return ({ station, step, kind, seconds }) => {
    if (kind === "stop") return false;
    const key = `${station}\u001F${step}`;
    const { count, sum } = known.get(key) ?? { count: 0, sum: 0 };
    if (seconds > longestState && count >= fewStates && seconds > (gapTimes * sum) / count) return true;
    known.set(key, { count: count + 1, sum: sum + seconds });
    return false;
  };
}

/** Whether a text is among the last ones; memory holds no more. */
function repeats(): (text: string) => boolean {
  let [young, old] = [new Set<string>(), new Set<string>()];
  return (text) => {
    if (young.has(text) || old.has(text)) return true;
    young.add(text);
    if (young.size >= mostRemembered) [young, old] = [new Set(), young];
    return false;
  };
}

/** Rows that hold a whole step: a duration, or a start and an end. */
function stepRow(columns: Understood, problems: Problems, take: (record: StepRecord) => void) {
  const lasts = new Map<string, { readonly start: number; readonly end: number }>();
  const role = (["start", "end", "time"] as const).find((each) => columns.has(each));
  return (reader: RowReader, line: number): void => {
    const names = namesOf(reader, columns, problems, line);
    if (names === undefined) return;
    const at = role && reader.instant(role);
    if (role !== undefined && at === undefined) return;
    const end = columns.has("end") && role === "start" ? reader.instant("end") : undefined;
    const seconds = columns.has("duration") ? reader.duration() : end && at && between(at.seconds, end.seconds);
    if (seconds === undefined) return;
    if (seconds <= 0) return problems.add("ends before it starts", line, `${seconds} s`);
    const { station, step, kind, run } = names;
    if (at === undefined) return take({ station, step, kind, run, seconds, line });
    // A time beside a duration is taken as that of the end, as controllers log it.
    const start = role === "start" ? at.seconds : at.seconds - seconds;
    const key = `${run}\u001F${station}`;
    const last = lasts.get(key) ?? { start: -Infinity, end: -Infinity };
    const seen = (from: number): string => `${Number((from - start).toPrecision(3))} s`;
    // Times in whole seconds may differ by one.
    if (start < last.start - 1) problems.add("earlier than the row before", line, seen(last.start));
    else if (start < last.end - 1) problems.add("overlap with the row before", line, seen(last.end));
    lasts.set(key, { start, end: start + seconds });
    // Written out: of ten million rows a copied object took a sixth of the time.
    take({ station, step, kind, run, seconds, line, start, hour: at.hour });
  };
}

interface Names extends Pick<StepRecord, "station" | "step" | "kind" | "run"> {}

/** Undefined where the row names no step although the log has a column for it. */
function namesOf(reader: RowReader, columns: Understood, problems: Problems, line: number): Names | undefined {
  const step = reader.text("step") || reader.text("state");
  const hasSteps = columns.has("step") || columns.has("state");
  if (hasSteps && step === "") return problems.add("empty step", line);
  const [station, run] = [reader.text("station") || "line", reader.text("run")];
  return { station, step: hasSteps ? step : "cycle", kind: columns.kindOf(step), run };
}
