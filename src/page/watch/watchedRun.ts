// A run as the place Watch reads it: its moments, and what the cell looks like at any time.
import type { TimelineRecord } from "#cell/records/timelineRecord.ts";
import type { Scene, SceneWords } from "#report/scene/scene.ts";

export interface WatchedRun {
  /** Seconds of the settled moments since the start of the run, rising, the first at 0. */
  readonly moments: readonly number[];
  /** The end of the record. */
  readonly seconds: number;
  sceneAt(seconds: number): Scene;
  wordsAt(seconds: number, resource: string): SceneWords;
  timelineAt(from: number, until: number): TimelineRecord;
}
