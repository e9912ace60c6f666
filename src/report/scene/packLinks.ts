// The critical path of a record: every timed step with the link to the completion that bound its start.
import type { RecordedRun } from "#cell/records/recordedRun.ts";
import type { GatheredRow } from "./resourceTrack.ts";
import type { RecordedActivity, RecordedLinks } from "./sceneRecord.ts";

export interface PackedLinks {
  readonly links: RecordedLinks;
  /** The link to the completion that bound the start of a row; -1 where there is none. */
  readonly boundOf: (row: GatheredRow) => number;
}

/** Seconds before a record from which links are kept, so that a wait at its beginning can be followed back. */
const lead = 3600;

export function packLinks(run: RecordedRun, from: number): PackedLinks {
  const activities = activitiesOf(run);
  const all = run.links();
  const first = all.findIndex(({ seconds }) => seconds >= from - lead);
  const kept = first === -1 ? [] : all.slice(first);
  const before = Int32Array.from(kept, (link) => Math.max(-1, link.before - first));
  const numbers = new Map<string, number>();
  const starts = new Map<string, number>();
  kept.forEach(({ activity, seconds }, number) => {
    const { step, at } = activities[activity]!;
    numbers.set(keyOf(activity, seconds), number);
    starts.set(keyOf(step, at, seconds), number);
  });
  return {
    links: {
      activities,
      activity: Uint16Array.from(kept, ({ activity }) => activity),
      seconds: Float64Array.from(kept, ({ seconds }) => seconds),
      before,
      tied: Uint8Array.from(kept, ({ isTied }) => (isTied ? 1 : 0)),
    },
    boundOf: ({ step, at, seconds, boundBy }) => {
      // The path of a step that a stop held back goes by way of that stop.
      const own = step === null ? undefined : starts.get(keyOf(step, at, seconds));
      if (own !== undefined) return before[own]!;
      return boundBy === null ? -1 : (numbers.get(keyOf(...boundBy)) ?? -1);
    },
  };
}

const keyOf = (...parts: readonly (string | number | null)[]): string => parts.join("\n");

function activitiesOf({ plan }: RecordedRun): readonly RecordedActivity[] {
  const resources = new Map(plan.processes.map(({ name, resource }) => [name, resource]));
  return plan.activities.map(({ resource, step, process, owner, role = null, task = null }) => {
    return { resource, step, process, at: resources.get(process) ?? null, owner, role, task };
  });
}
