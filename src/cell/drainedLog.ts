// An event log that is emptied while the run goes on, so that it stays short however long the run is.
import { EventLog, type LoggedEvent } from "#engine/eventLog.ts";

export class DrainedLog extends EventLog {
  #waiting: LoggedEvent[] = [];

  override add(
    time: number,
    resource: number,
    state: number,
    row: number,
    cycle: number,
    hand: number,
    boundBy: number,
    boundTime: number,
  ): void {
    this.#waiting.push({ time, resource, state, row, cycle, hand, boundBy, boundTime });
  }

  /** What was logged since the last time. */
  drain(): readonly LoggedEvent[] {
    const drained = this.#waiting;
    this.#waiting = [];
    return drained;
  }
}
