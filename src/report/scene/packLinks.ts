// The critical path of a record: every timed step with the link to the completion that bound its start.
import type { RecordedRun } from "#cell/records/recordedRun.ts";
import type { RecordedLinks } from "./sceneRecord.ts";

export interface PackedLinks {
  readonly links: RecordedLinks;
  /** The link of an activity that began at this time; -1 where there is none. */
  readonly numberOf: (bound: readonly [activity: number, seconds: number] | null) => number;
}

/** Seconds before a record from which links are kept, so that a wait at its beginning can be followed back. */
const lead = 3600;

export function packLinks(run: RecordedRun, from: number): PackedLinks {
  const all = run.links();
  const first = Math.max(
    0,
    all.findIndex(({ seconds }) => seconds >= from - lead),
  );
  const kept = all.slice(first);
  const numbers = new Map(kept.map(({ activity, seconds }, number) => [keyOf(activity, seconds), number]));
  const activities = run.plan.activities.map(({ resource, step, process, owner, role = null, task = null }) => ({
    resource,
    step,
    process,
    owner,
    role,
    task,
  }));
  return {
    links: {
      activities,
      activity: Uint16Array.from(kept, ({ activity }) => activity),
      seconds: Float64Array.from(kept, ({ seconds }) => seconds),
      before: Int32Array.from(kept, ({ before }) => Math.max(-1, before - first)),
      tied: Uint8Array.from(kept, ({ isTied }) => (isTied ? 1 : 0)),
    },
    numberOf: (bound) => (bound === null ? -1 : (numbers.get(keyOf(...bound)) ?? -1)),
  };
}

const keyOf = (activity: number, seconds: number): string => `${activity} ${seconds}`;
