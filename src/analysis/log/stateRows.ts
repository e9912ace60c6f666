// Rows of events: a state lasts until the next row of its station, or from a start to its end.
import type { Problems, StepRecord } from "./logRecord.ts";
import type { RowReader, Understood } from "./logRows.ts";
import { between, type Instant } from "./logTimes.ts";

interface Open extends Pick<StepRecord, "station" | "step" | "kind" | "line" | "run"> {
  readonly instant: Instant;
}

const starts = /^(?:start\w*|begin\w*|on|enter\w*|beginn\w*|anfang|ein|1)$/iu;
const ends = /^(?:end\w*|stop\w*|finish\w*|off|exit\w*|leave|done|ende|aus|0)$/iu;

export function stateRows(columns: Understood, problems: Problems, take: (record: StepRecord) => void) {
  const open = new Map<string, Open>();
  const finish = ({ station, step, kind, line, run, instant }: Open, at: Instant): void => {
    const seconds = between(instant.seconds, at.seconds);
    // A state of no time is passed through at one instant.
    if (seconds > 0) take({ station, step, kind, run, seconds, line, start: instant.seconds, hour: instant.hour });
  };
  const row = (reader: RowReader, line: number): void => {
    const instant = reader.instant("time");
    if (instant === undefined) return;
    const [station, run, event] = [reader.text("station") || "line", reader.text("run"), reader.text("event")];
    const name = nameOf(reader, columns);
    if (name.step === "") return problems.add("empty step", line);
    const isPaired = starts.test(event) || ends.test(event);
    const key = isPaired ? `${run}\u001F${station}\u001F${name.step}` : `${run}\u001F${station}`;
    const before = open.get(key);
    if (before && instant.seconds < before.instant.seconds) return problems.add("time goes back", line);
    const next = { station, run, line, instant, step: name.step, kind: name.kind };
    if (!isPaired) {
      if (before) finish(before, instant);
      open.set(key, next);
    } else if (starts.test(event)) {
      if (before) problems.add("start without an end", before.line, before.step);
      open.set(key, next);
    } else if (before) {
      finish(before, instant);
      open.delete(key);
    } else problems.add("end without a start", line, name.step);
  };
  const end = (): void => {
    for (const { line, step } of open.values()) problems.add("state without an end", line, step);
  };
  return { row, end };
}

/** A row with a cause of waiting is a wait, whatever step it waits for. */
function nameOf(reader: RowReader, columns: Understood): Pick<StepRecord, "step" | "kind"> {
  const [step, state] = [reader.text("step"), reader.text("state")];
  const name = step || state;
  if (columns.has("cause") && reader.text("cause") !== "") return { step: state || step, kind: "wait" };
  const kind = columns.kindOf(state || step);
  return kind === "stop" ? { step: state || step, kind } : { step: name, kind };
}
