// The record of a run as settled moments: plain data that a worker can send to a page.
import type { CellResource } from "#cell/words/cellTable.ts";
import type { CrewTask, DeliverySpec, DispatchRule } from "#scenario/scenario.ts";
import type { StepRole } from "#cell/words/stepNames.ts";
import type { SagInput } from "#cell/records/sagInput.ts";
import type { Rises, ServerCounts, StationCounts } from "./counts.ts";
import type { PackedRows } from "./sceneRow.ts";
import type { Scene } from "./scene.ts";

export interface RecordedResource {
  readonly name: string;
  readonly kind: Exclude<CellResource["kind"], "shift">;
  /** The station that it serves alone. */
  readonly station: string | null;
  /** The server to which a place belongs. */
  readonly group: string | null;
  readonly rows: PackedRows;
}

export interface RecordedStation {
  readonly name: string;
  readonly cavities: number;
  /** Null where no mass is given. */
  readonly shotGrams: number | null;
  readonly counts: StationCounts;
  /** Null where it is not computed. */
  readonly cooling: RecordedCooling | null;
  readonly sag: SagInput | null;
}

/** °C of the hottest point after so many seconds of contact with the mold, at equal steps from 0. */
export interface RecordedCooling {
  readonly step: number;
  readonly temperatures: Float64Array;
  /** Seconds from the start of the blow to the contact; null: the contact begins as the blow ends. */
  readonly inflation: number | null;
}

export interface RecordedServer {
  readonly name: string;
  readonly station: string | null;
  readonly places: readonly string[];
  readonly room: number;
  readonly counts: ServerCounts;
}

/** A step on the critical path. */
export interface RecordedActivity {
  readonly resource: string;
  readonly step: string;
  readonly process: string;
  /** The resource at which that process works. */
  readonly at: string | null;
  readonly owner: string;
  readonly role: StepRole | null;
  readonly task: CrewTask | null;
}

/** Links by number: activity, seconds of its start, the link that bound it (-1: before the record), and 1 where another was as late. */
export interface RecordedLinks {
  readonly activities: readonly RecordedActivity[];
  readonly activity: Uint16Array;
  readonly seconds: Float64Array;
  readonly before: Int32Array;
  readonly tied: Uint8Array;
}

export interface SceneRecord {
  readonly name: string;
  readonly replication: number;
  /** Seconds of the run; every time in it is counted from the start of the replication. */
  readonly from: number;
  readonly until: number;
  /** The record ends before the time that was asked for, since it may have no more moments. */
  readonly isCutShort: boolean;
  /** Seconds at which something happened, ascending; the first is `from`. */
  readonly moments: Float64Array;
  readonly delivery: Scene["delivery"];
  readonly dispatch: DispatchRule;
  readonly spec: DeliverySpec;
  readonly capacityGrams: number | null;
  readonly words: readonly string[];
  readonly resources: readonly RecordedResource[];
  readonly stations: readonly RecordedStation[];
  readonly servers: readonly RecordedServer[];
  /** Good parts of the takeaway; null where parts are good as they leave the mold. */
  readonly good: Rises | null;
  readonly links: RecordedLinks;
}

/** Seconds of the run. */
export interface RecordRequest {
  readonly replication?: number;
  readonly from?: number;
  readonly until: number;
}
