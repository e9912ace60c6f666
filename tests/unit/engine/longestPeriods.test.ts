// Holds the periods that a run forgets on the way to those of a run that keeps them all.
import fc from "fast-check";
import { expect, test } from "vitest";
import { LongestPeriods, type ActivePeriod, type LongestActive } from "#engine/run/longestActive.ts";

const end = 120;

/** Pauses and work of one resource, from the start of the run; a pause of no length is not given. */
const spans = fc.array(fc.tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 25 })), { maxLength: 12 });

function periodsOf(resource: number, gaps: readonly (readonly [number, number])[]): readonly ActivePeriod[] {
  let tick = -1;
  return gaps.flatMap(([pause, work]) => {
    const start = tick + pause;
    tick = start + work;
    return start < end ? [{ resource, start, end: tick }] : [];
  });
}

/** Instant by instant, after the definition: an owner is left only when its period ends, for the longest that then goes on. */
function byInstants(all: readonly (readonly ActivePeriod[])[]): LongestActive[] {
  const periods = all.flat().map((period) => ({ ...period, end: Math.min(period.end, end) }));
  const chain: ActivePeriod[] = [];
  for (let tick = 0; tick < end; tick++) {
    const last = chain.at(-1);
    if (last && tick < last.end) continue;
    // Those that begin in the instant in which the last one ends take part.
    const going = periods.filter((each) => each.start <= tick && each.end > tick);
    going.sort((a, b) => b.end - b.start - (a.end - a.start) || a.start - b.start || a.resource - b.resource);
    if (going[0]) chain.push(going[0]);
  }
  // Where three overlap, the first two of them still hand over.
  const owners = Array.from({ length: end }, (_, tick) =>
    chain.filter((each) => each.start <= tick && tick < each.end).slice(0, 2),
  );
  return all.map((_, resource) => {
    const share = (count: number): number =>
      owners.filter((own) => own.length === count && own.some((each) => each.resource === resource)).length;
    return { sole: share(1), shifting: share(2) / 2 };
  });
}

/** As the core does: a resource keeps its last period until the next one begins. */
function takenAt(all: readonly (readonly ActivePeriod[])[], instants: readonly number[]): LongestActive[] {
  const longest = new LongestPeriods(all.length);
  const seenAt = (
    now: number,
  ): { readonly over: readonly ActivePeriod[]; readonly present: readonly ActivePeriod[] } => {
    const begun = all.map((own) => own.filter(({ start }) => start <= now));
    const present = begun.flatMap((own) => own.slice(-1));
    return {
      over: begun.flatMap((own) => own.slice(0, -1)),
      present: present.map((each) => (each.end > now ? { ...each, end: Infinity } : each)),
    };
  };
  let taken = 0;
  for (const now of instants) {
    const before = new Set(seenAt(taken).over);
    const { over, present } = seenAt(now);
    const fresh = taken === 0 ? over : over.filter((each) => !before.has(each));
    longest.take(fresh, present, now);
    taken = now;
  }
  const before = new Set(taken === 0 ? [] : seenAt(taken).over);
  const { over, present } = seenAt(end);
  return longest.totals(
    over.filter((each) => !before.has(each)),
    present,
    end,
  );
}

const cells = fc.array(spans, { minLength: 1, maxLength: 5 });
const looks = fc.uniqueArray(fc.integer({ min: 1, max: end - 1 }), { maxLength: 12 });

// [C] every instant searched.
test("a run that is read on the way has the same longest periods as one that is read at its end, and as every instant says", () => {
  fc.assert(
    fc.property(cells, looks, (gaps, instants) => {
      const all = gaps.map((own, resource) => periodsOf(resource, own));
      const sorted = instants.toSorted((a, b) => a - b);
      expect(takenAt(all, sorted)).toEqual(takenAt(all, []));
      expect(takenAt(all, sorted)).toEqual(byInstants(all));
    }),
  );
});
