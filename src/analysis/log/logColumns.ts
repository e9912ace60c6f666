// Finds out what each column of a log holds: by its name, or as the call says.
import { didYouMean } from "#foundation/didYouMean.ts";
import type { Issue, IssueMeaning } from "#foundation/issue.ts";

export const logIssueCodes = {
  "log-columns": [
    "the log has no columns that a fit can use",
    'Name a column of durations, or of times and steps: `--column "duration=Cycle time"`.',
  ],
  "log-column-option": ["a --column names no column of the log, or no role", 'Write `--column "duration=Cycle time"`.'],
  "log-broken": ["the log is not well-formed CSV", "Check the quotes in the line that the message names."],
  "log-workbook": ["a log is a workbook, not text", "Save the sheet as CSV in the spreadsheet."],
  "log-scenario": ["a scenario stands where a log is expected", "Name the log: `blowcell match mine.yaml log.csv`."],
  "log-empty": [
    "no row of the log can be used",
    "Check the columns and units that were taken; map them with --column.",
  ],
  "log-order": ["the rows of the log are not in the order of time", "Sort the rows by time, the oldest first."],
  "log-groups": ["the log has too many stations and steps", "Check which column holds the step; map it with --column."],
  "log-rows": ["rows of the log are left out, or kept with a doubt", "Look at the first line that the message names."],
  "log-zone": ["a --zone is no time zone", "Write a name such as `Europe/Berlin`."],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

/** In the order of the search: the first column that fits takes the role. */
const names = {
  duration:
    "duration durations dur cycletime cycletimes steptime elapsed elapsedtime timetaken dauer zykluszeit schrittzeit taktzeit",
  start: "start starttime begin begintime started from beginn startzeit anfang",
  end: "end endtime finish finishtime finished ended until to ende endzeit",
  date: "date day datum tag",
  time: "time timestamp datetime clock zeit zeitstempel uhrzeit zeitpunkt",
  station: "resource station machine mold mould maschine werkzeug form stationname line side",
  step: "step phase operation activity action task schritt vorgang taetigkeit tätigkeit",
  state: "state status zustand",
  event: "event eventtype type ereignis art",
  cause: "cause waitcause",
  run: "replication run",
} as const;

export type LogRole = keyof typeof names;
const logRoles = Object.keys(names) as readonly LogRole[];

export interface LogColumn {
  readonly index: number;
  readonly name: string;
  /** `ms` of `Zykluszeit [ms]` and of `duration_ms`. */
  readonly unit?: string;
}

export type LogColumns = Readonly<Partial<Record<LogRole, LogColumn>>>;

/** `cool_s`, `cool (s)` and `cool [s]` all give seconds. */
const unitPattern = /\s*(?:[([]\s*([^)\]]+?)\s*[)\]]|[_ ](ms|s|sec|min|h|us|µs))\s*$/iu;

function columnOf(name: string, index: number): LogColumn {
  const [, bracketed, tail] = unitPattern.exec(name) ?? [];
  const unit = (bracketed ?? tail)?.toLowerCase();
  return unit === undefined ? { index, name } : { index, name, unit };
}

const plain = (name: string): string =>
  name
    .toLowerCase()
    .replace(unitPattern, "")
    .replaceAll(/[\s_.-]/gu, "");

/** Detected roles, with those of `--column role=name` in their place. */
export function logColumns(
  header: readonly string[],
  mapped: readonly string[] = [],
): { readonly columns: LogColumns; readonly issues: readonly Issue[] } {
  const issues: Issue[] = [];
  const given = new Map<LogRole, LogColumn>();
  for (const text of mapped) {
    const reading = readMapping(text, header);
    if ("code" in reading) issues.push(reading);
    else given.set(reading.role, reading.column);
  }
  const taken = new Set([...given.values()].map(({ index }) => index));
  const found = new Map(given);
  for (const role of logRoles) {
    if (found.has(role)) continue;
    const known = names[role].split(" ");
    const index = known
      .map((name) => header.findIndex((each, i) => !taken.has(i) && plain(each) === name))
      .find((each) => each >= 0);
    if (index === undefined) continue;
    taken.add(index);
    found.set(role, columnOf(header[index]!, index));
  }
  // A date alone is the time.
  const [date, time] = [found.get("date"), found.get("time")];
  if (date !== undefined && time === undefined) {
    found.set("time", date);
    found.delete("date");
  }
  const columns: LogColumns = Object.fromEntries(found);
  return { columns, issues: [...issues, ...(isEnough(columns) || issues.length > 0 ? [] : [tooFew(header)])] };
}

function isEnough({ duration, start, end, time, step, state }: LogColumns): boolean {
  if (duration ?? (start && end)) return true;
  return time !== undefined && (step ?? state) !== undefined;
}

function readMapping(text: string, header: readonly string[]): { role: LogRole; column: LogColumn } | Issue {
  const [role = "", name = ""] = text.split(/=(.*)/su).map((part) => part.trim());
  const known = logRoles.find((each) => each === role);
  if (known === undefined || name === "") {
    const expected = `a role (${logRoles.join(", ")}), an equals sign and the name or number of a column`;
    return issueOf("log-column-option", `"${text}" maps no column.`, 'Write `--column "duration=Cycle time"`.', {
      option: "--column",
      value: text,
      expected,
    });
  }
  const exact = header.findIndex((each) => each === name || each.toLowerCase() === name.toLowerCase());
  const index = exact >= 0 ? exact : /^\d+$/u.test(name) ? Number(name) - 1 : -1;
  if (index >= 0 && index < header.length) return { role: known, column: columnOf(header[index]!, index) };
  const meant = didYouMean(name, header);
  const remedy = meant === undefined ? `Write one of: ${header.join(", ")}.` : `Did you mean \`${role}=${meant}\`?`;
  return issueOf("log-column-option", `The log has no column "${name}".`, remedy, {
    option: "--column",
    value: text,
    expected: `one of ${header.join(", ")}`,
  });
}

function tooFew(header: readonly string[]): Issue {
  const message = "No column of durations, of starts and ends, or of times with steps or states is found.";
  const remedy =
    'Map the columns: `--column "duration=NAME"`, also `station`, `step`, `time`, `start`, `end`, `state`. Delete lines above the header.';
  return issueOf("log-columns", message, remedy, {
    value: header.join(", "),
    expected: "a header row with such names",
  });
}

export function issueOf(
  code: keyof typeof logIssueCodes,
  message: string,
  remedy: string,
  more: Partial<Issue> = {},
): Issue {
  return { code, severity: "error", fate: "file", path: "", message, remedy, ...more };
}
