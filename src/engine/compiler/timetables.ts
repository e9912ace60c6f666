// The timetables of all processes, one after the other, as the core reads them.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { Row } from "./row.ts";
import type { ProcessSpec } from "./stepTable.ts";

export interface Timetables {
  /** Of each process the number of its first entry. */
  readonly begins: readonly number[];
  /** Of each entry its tick, and the row to which it leads. */
  readonly ticks: readonly number[];
  readonly leadsTo: readonly number[];
}

export function timetablesOf(processes: readonly ProcessSpec[], rows: readonly Row[]): Timetables {
  const begins: number[] = [];
  const ticks: number[] = [];
  const leadsTo: number[] = [];
  processes.forEach(({ timetable = [] }, process) => {
    begins.push(ticks.length);
    const firstRow = rows.findIndex((row) => row.process === process);
    for (const { until, leadsTo: step = 0 } of timetable) {
      ticks.push(Math.round(until * TICKS_PER_SECOND));
      leadsTo.push(firstRow + step);
    }
  });
  return { begins, ticks, leadsTo };
}
