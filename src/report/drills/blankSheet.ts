// A chart without words for a sheet to fill in: every state is a number, and the key gives the words.
import type { TimelineRecord } from "#cell/records/timelineRecord.ts";
import { screenName } from "#report/words/tradeWords.ts";

export interface BlankSheet {
  /** The states are numbers, and no critical path is shown. */
  readonly chart: TimelineRecord;
  readonly key: readonly { readonly number: string; readonly resource: string; readonly state: string }[];
}

/** Numbers go down the chart, resource by resource; the same state has one number at all stations. */
export function blankSheet(record: TimelineRecord, kindOf: (resource: string) => string): BlankSheet {
  const numbers = new Map<string, string>();
  const key: BlankSheet["key"][number][] = [];
  const intervals = record.intervals.map((interval) => {
    const kind = kindOf(interval.resource);
    const place = `${kind}\n${interval.state}`;
    const known = numbers.get(place);
    const number = known ?? String(numbers.size + 1);
    if (known === undefined) {
      numbers.set(place, number);
      key.push({ number, resource: screenName(kind), state: interval.state });
    }
    return { ...interval, state: number };
  });
  return { chart: { ...record, intervals, chain: [] }, key };
}
