// Independent computation of molds whose parts operators remove and pack: from instant to instant, by the table of instants.

/*
 * - All that ends at an instant ends first: coolings, removals, packings. An operator is then free, a packed part gives room.
 * - Then parts move on: the mold that has waited longest hands over one part where there is room; a free packer takes a part.
 * - Only when no part can move on is an operator given to the most urgent call; among equals to the earliest, then to molds before
 *   packers. What follows from that comes first again.
 * - A mold cools when its last part has room. No task takes less than one tick.
 *
 * Not included: melt (it is always there), walks, stops.
 */

export interface PackingCell {
  /** In the order of ties: ticks of cooling and removal of each mold. */
  readonly molds: readonly { readonly cool: number; readonly remove: number }[];
  readonly cavities: number;
  readonly operators: number;
  readonly packers: number;
  readonly buffer: number;
  readonly pack: number;
  readonly first: "packing" | "removal";
}

type Activity = "cooling" | "calling" | "removing" | "handing over" | "idle" | "packing";

interface Worker {
  readonly isMold: boolean;
  activity: Activity;
  /** The end of what takes time, otherwise the beginning of the wait. */
  at: number;
  parts: number;
}

export interface PackingRun {
  /** Start of every removal, by mold. */
  readonly removals: readonly (readonly number[])[];
  /** Start of every packing. */
  readonly packings: readonly number[];
}

const timed: readonly Activity[] = ["cooling", "removing", "packing"];

export function packingRecursion(cell: PackingCell, until: number): PackingRun {
  const molds = cell.molds.map(({ cool }): Worker => ({ isMold: true, activity: "cooling", at: cool, parts: 0 }));
  const packers = Array.from({ length: cell.packers }, (): Worker => ({
    isMold: false,
    activity: "idle",
    at: 0,
    parts: 0,
  }));
  const workers = [...molds, ...packers];
  const removals = cell.molds.map((): number[] => []);
  const packings: number[] = [];
  let [free, room, parts, now] = [cell.operators, cell.buffer + cell.packers, 0, 0];

  /** The worker of the least key; the scan keeps the earlier one among equals. */
  const leastOf = (among: readonly Worker[], key: (worker: Worker) => number): Worker | undefined =>
    among.reduce<Worker | undefined>((best, each) => (best && key(best) <= key(each) ? best : each), undefined);

  const end = (worker: Worker): void => {
    if (worker.activity === "cooling") worker.activity = "calling";
    else {
      free += 1;
      if (worker.activity === "packing") room += 1;
      else worker.parts = cell.cavities;
      worker.activity = worker.isMold ? "handing over" : "idle";
    }
  };

  const movePart = (): boolean => {
    const waiting = leastOf(
      molds.filter(({ activity }) => activity === "handing over"),
      ({ at }) => at,
    );
    if (waiting && room > 0) {
      room -= 1;
      parts += 1;
      waiting.parts -= 1;
      waiting.at = now;
      if (waiting.parts > 0) return true;
      waiting.activity = "cooling";
      waiting.at = now + cell.molds[molds.indexOf(waiting)]!.cool;
      return true;
    }
    const idle = packers.find(({ activity }) => activity === "idle");
    if (!idle || parts === 0) return false;
    parts -= 1;
    idle.activity = "calling";
    idle.at = now;
    return true;
  };

  const giveOperator = (): boolean => {
    const calls = workers.filter(({ activity }) => activity === "calling");
    const urgent = calls.filter(({ isMold }) => isMold === (cell.first === "removal"));
    const call = leastOf(urgent.length > 0 ? urgent : calls, ({ at }) => at);
    if (!call || free === 0) return false;
    free -= 1;
    call.activity = call.isMold ? "removing" : "packing";
    const mold = molds.indexOf(call);
    if (call.isMold) removals[mold]!.push(now);
    else packings.push(now);
    call.at = now + (call.isMold ? cell.molds[mold]!.remove : cell.pack);
    return true;
  };

  while (now <= until) {
    for (const worker of workers) if (timed.includes(worker.activity) && worker.at === now) end(worker);
    while (movePart() || giveOperator());
    now = Math.min(...workers.filter(({ activity }) => timed.includes(activity)).map(({ at }) => at));
  }
  return { removals, packings };
}
