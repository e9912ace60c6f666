// The event list against a plain search of all pending times, both where it scans and where it keeps a heap.
import * as fc from "fast-check";
import { expect, test } from "vitest";
import { EventList } from "#engine/eventList.ts";

test.each([3, 8, 9, 40])(
  "of %i processes the earliest is first; of equal times the process listed first",
  (processes) => {
    // Few different ticks, so that most are shared; a tick of -1 stands for nothing pending any more.
    const change = fc.tuple(fc.nat({ max: processes - 1 }), fc.integer({ min: -1, max: 6 }));
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 150 }), (changes) => {
        const list = new EventList(processes);
        const due = Array.from({ length: processes }, () => Infinity);
        for (const [process, tick] of changes) {
          due[process] = tick === -1 ? Infinity : tick;
          if (tick === -1) list.clear(process);
          else list.set(process, tick);
          const earliest = Math.min(...due);
          expect(list.first()).toBe(earliest === Infinity ? -1 : due.indexOf(earliest));
        }
      }),
      { seed: 20260751, numRuns: 200 },
    );
  },
);
