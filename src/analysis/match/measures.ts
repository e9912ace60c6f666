// The measures of a line with their errors: of a log by batches, of the model by replications.
import { batchMeansOf, estimateOf, type Estimate } from "#analysis/statistics/equivalence.ts";
import { allShots, gapsOf, shotsOf, type Anchor } from "./deliveries.ts";
import type { Cell, Doing } from "./doing.ts";
import type { Stretch } from "./lineLog.ts";

const SECONDS_AN_HOUR = 3600;
const mostBatches = 20;

/** One measure of a log and of each run of the model. */
export interface Measured {
  readonly log: Estimate | undefined;
  readonly model: Estimate | undefined;
}

/** Values of a series in the log's stretches, and in each run. */
type Series = (stretch: Stretch, of: "inLog" | "inModel") => readonly Cell[];

/** Mean of a series: the log's by batch means over all stretches, the model's by its runs. */
export function meansOf(log: readonly Stretch[], runs: readonly Stretch[], series: Series): Measured {
  const means = runs.map((run) => series(run, "inModel")).filter((cells) => cells.length > 0);
  return {
    log: batchEstimate(log.flatMap((stretch) => series(stretch, "inLog"))),
    model: estimateOf(means.map(meanOf)),
  };
}

/** The mean of all, with the error of batches, which need not be equally long. */
function batchEstimate(cells: readonly Cell[]): Estimate | undefined {
  const found = estimateOf(batchMeansOf(cells));
  return found && { ...found, mean: meanOf(cells) };
}

function meanOf(cells: readonly Cell[]): number {
  const count = cells.reduce((all, cell) => all + cell.count, 0);
  return cells.reduce((all, { sum }) => all + sum, 0) / count;
}

/** Shots an hour of all stations: the inverse of the mean time between two shots. */
export function throughput(log: readonly Stretch[], runs: readonly Stretch[], anchors: readonly Anchor[]): Measured {
  const gaps = meansOf(log, runs, (stretch, of) => gapsOf(allShots(stretch, anchors, of)));
  return { log: gaps.log && inverse(gaps.log), model: gaps.model && inverse(gaps.model) };
}

export function cycleTimes(anchor: Anchor): Series {
  return (stretch, of) => gapsOf(shotsOf(stretch, anchor.station, anchor[of])?.marks() ?? []);
}

/** The error by the delta method. */
function inverse({ mean, error, freedom }: Estimate): Estimate {
  return { mean: SECONDS_AN_HOUR / mean, error: (SECONDS_AN_HOUR * error) / (mean * mean), freedom };
}

/** Share of the time that a resource spends in something. */
export function shares(
  log: readonly Stretch[],
  runs: readonly Stretch[],
  isMeant: (doing: Doing) => boolean,
): Measured {
  const each = Math.max(1, Math.floor(mostBatches / log.length));
  return {
    log: estimateOf(log.flatMap((stretch) => batchShares(stretch, isMeant, each))),
    model: estimateOf(runs.flatMap((run) => batchShares(run, isMeant, 1))),
  };
}

function batchShares(
  { doings, from, until }: Stretch,
  isMeant: (doing: Doing) => boolean,
  count: number,
): readonly number[] {
  const length = (until - from) / count;
  const sums = new Float64Array(count);
  for (const doing of doings.values()) {
    if (!isMeant(doing)) continue;
    for (const span of doing.spans()) {
      const share = span.seconds / (span.until - span.from);
      addTo(sums, (span.from - from) / length, (span.until - from) / length, share);
    }
  }
  return [...sums];
}

/** A time from one place to another, in batches, counts in each of them with its part. */
function addTo(sums: Float64Array, from: number, until: number, share: number): void {
  for (let batch = Math.floor(from); batch < sums.length && batch < until; batch++) {
    sums[batch] = sums[batch]! + (Math.min(until, batch + 1) - Math.max(from, batch)) * share;
  }
}
