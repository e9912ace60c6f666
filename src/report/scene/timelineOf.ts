// The timing chart of a stretch of a record.
import type { ChainSegment, TimelineInterval, TimelineRecord } from "#cell/records/timelineRecord.ts";
import { shotRoles } from "#cell/words/cellTable.ts";
import { rowAt, rowOf } from "./rowsOf.ts";
import type { RecordedResource, SceneRecord } from "./sceneRecord.ts";
import { wayLink } from "./wayBack.ts";

/** Of a server with many places the first ones stand for all. */
const mostPlaces = 4;

/** Seconds of the run; what lies outside the record is left out. */
export function timelineOf(record: SceneRecord, from: number, until: number): TimelineRecord {
  const stretch = { from: Math.max(from, record.from), until: Math.min(until, record.until) };
  const resources = record.resources.filter((resource) => isShown(record, resource));
  return {
    replication: record.replication,
    from: stretch.from,
    seconds: Math.max(0, stretch.until - stretch.from),
    resources: resources.map(({ name }) => name),
    intervals: resources.flatMap((resource) => intervalsOf(record, resource, stretch)),
    chain: chainOf(record, stretch),
  };
}

function isShown({ resources }: SceneRecord, { name, group }: RecordedResource): boolean {
  if (group === null) return true;
  return resources.filter((each) => each.group === group).findIndex((each) => each.name === name) < mostPlaces;
}

interface Stretch {
  readonly from: number;
  readonly until: number;
}

function intervalsOf(record: SceneRecord, resource: RecordedResource, stretch: Stretch): readonly TimelineInterval[] {
  const intervals: TimelineInterval[] = [];
  for (let { number } = rowAt(record, resource, stretch.from); number < resource.rows.count; number++) {
    const { seconds, until, state, kind } = rowOf(record, resource, number);
    if (seconds >= stretch.until) break;
    const isCut = seconds < stretch.from || until === null || until > stretch.until;
    const span = within(stretch, seconds, until ?? Infinity);
    if (span) intervals.push({ resource: resource.name, state, kind, ...span, isCut });
  }
  return intervals;
}

/** Back from the last shot that began in the record: by then the ways of the steps within the stretch have mostly met. */
function chainOf(record: SceneRecord, stretch: Stretch): readonly ChainSegment[] {
  const { links } = record;
  const segments: ChainSegment[] = [];
  let end = Infinity;
  for (let link = lastShot(record); link !== -1 && end > stretch.from; link = links.before[link]!) {
    const start = links.seconds[link]!;
    const span = within(stretch, start, end);
    if (span) {
      const { resource, step, role, task, isTied } = wayLink(record, link, end);
      const { process } = links.activities[links.activity[link]!]!;
      const known = { ...(role ? { role } : {}), ...(task ? { task } : {}) };
      segments.push({ resource, step, process, ...known, ...span, tied: isTied });
    }
    end = start;
  }
  return segments.toReversed();
}

/** Of the whole record, so that two stretches show pieces of the same path. */
function lastShot({ links }: SceneRecord): number {
  return links.activity.findLastIndex((activity) => {
    const { role } = links.activities[activity]!;
    return role !== null && shotRoles.includes(role);
  });
}

function within({ from, until }: Stretch, start: number, end: number): { start: number; end: number } | undefined {
  const [first, last] = [Math.max(start, from), Math.min(end, until)];
  return last > first ? { start: first - from, end: last - from } : undefined;
}
