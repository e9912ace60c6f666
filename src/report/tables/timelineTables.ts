// The numbers behind the timing chart, in the words of the event log.
import type { TimelineRecord } from "#cell/records/timelineRecord.ts";
import { number, resourceColumn, text, truth } from "./columns.ts";
import { fillTable, type Table } from "./table.ts";

const start = number("start_s", "Start, from the start of the picture", "s");
const end = number("end_s", "End, from the start of the picture", "s");

export function timelineTable({ intervals }: TimelineRecord): Table {
  const state = text("state", "What the resource was doing or waiting for");
  const kind = text("kind", "`working`, `waiting`, `stopped`, `set-up` or `off`");
  return fillTable(
    {
      name: "timeline",
      meaning: "One period of a resource in a state.",
      columns: [resourceColumn, state, kind, start, end],
    },
    intervals.map((interval) => [interval.resource, interval.state, interval.kind, interval.start, interval.end]),
  );
}

export function pathTable({ chain }: TimelineRecord): Table {
  const step = text("step", "Step on the critical path");
  const station = text("cycle_of", "Whose cycle the step belongs to");
  const tied = truth("tied", "`true` where another completion was equally late");
  return fillTable(
    {
      name: "critical-path",
      meaning: "One step on the critical path.",
      columns: [resourceColumn, step, station, start, end, tied],
    },
    chain.map((segment) => [segment.resource, segment.step, segment.process, segment.start, segment.end, segment.tied]),
  );
}
