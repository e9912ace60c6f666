// Gathers the settled states of one resource: of all that happens to it in one instant only the last state stays.
import type { EventRecord } from "#cell/records/eventRecord.ts";
import type { StepRole } from "#cell/words/stepNames.ts";
import { emptyMold, moldDuring, type MoldState } from "./moldRows.ts";
import type { SceneRow } from "./sceneRow.ts";

/** What the melt of a resource becomes in a step. */
export type MeltStep = Pick<SceneRow, "low" | "high" | "shotOf">;

export type GatheredRow = { -readonly [Key in keyof SceneRow]: SceneRow[Key] } & {
  /** Rows of one step have one number, those in which a stop holds it included. */
  readonly run: number;
  /** False where the state belongs to no step. */
  readonly isInRun: boolean;
  /** Activity and seconds of the completion that bound its start. */
  readonly boundBy: readonly [activity: number, seconds: number] | null;
};

/** Rows before the record that may still be asked for: those of the cycle under way. */
const lead = 24;
/** Rows after which those before the record are dropped. */
const mostBefore = 4096;

export class ResourceTrack {
  readonly name: string;
  rows: GatheredRow[] = [];
  readonly #from: number;
  #run = 0;
  #start: EventRecord | undefined;
  #mold: MoldState = emptyMold;
  #before: StepRole | null = null;

  constructor(name: string, from: number) {
    this.name = name;
    this.#from = from;
  }

  /** `melt`: what this event changes of the melt. */
  take(event: EventRecord, melt: MeltStep): void {
    this.#mold = moldDuring(event, this.#mold, this.#before);
    if (event.role !== null) this.#before = event.role;
    if (event.step !== null) {
      this.#run++;
      this.#start = event;
    }
    const row = this.#rowOf(event, melt);
    if (this.rows.at(-1)?.seconds === event.seconds) this.rows.pop();
    const last = this.rows.at(-1);
    if (last === undefined || !goesOn(row, last)) this.rows.push(row);
    if (this.rows.length > mostBefore && event.seconds <= this.#from) this.rows = this.rows.slice(-lead);
  }

  /** Without what is long over. */
  trim(): void {
    const first = this.rows.findLastIndex(({ seconds }) => seconds <= this.#from);
    this.rows = this.rows.slice(Math.max(0, first - lead));
  }

  #rowOf(event: EventRecord, melt: MeltStep): GatheredRow {
    const start = this.#start;
    // A step that goes on after a stop is logged without its shot.
    const { step, role, station, shot, operator, at } = start?.state === event.state && start ? start : event;
    const isInRun =
      start !== undefined && (event.step !== null || event.kind === "stopped" || start.state === event.state);
    const heldRole = isInRun ? start.role : null;
    const { seconds, state, kind } = event;
    const { low, high, shotOf } = melt;
    const { content, isShut, air } = this.#mold;
    const boundBy = event.activity === -1 ? null : ([event.activity, event.boundBySeconds ?? 0] as const);
    const progress = { from: 0, to: 1, bound: -1, run: this.#run, isInRun, boundBy };
    return {
      seconds,
      state,
      kind,
      step,
      role,
      station,
      shot,
      operator,
      at,
      heldRole,
      low,
      high,
      shotOf,
      content,
      isShut,
      air,
      ...progress,
    };
  }
}

/** The same step, shown again after a stop that it did not see, or the same wait. */
function goesOn(row: GatheredRow, last: GatheredRow): boolean {
  if (row.state !== last.state) return false;
  if (row.run === last.run) return true;
  return row.kind !== "working" && row.step === last.step && row.station === last.station && row.shot === last.shot;
}
