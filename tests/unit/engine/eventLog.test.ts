// The log of events holds every entry that the core writes, in whatever pieces they are copied.
import * as fc from "fast-check";
import { expect, test } from "vitest";
import { ENTRY_SIZE } from "#core/border/numbers.ts";
import { EventLog } from "#engine/run/eventLog.ts";

/** Entries as the core writes them: two real numbers, then whole numbers. */
function written(times: readonly number[]): ArrayBuffer {
  const memory = new ArrayBuffer(times.length * ENTRY_SIZE);
  times.forEach((time, i) => {
    new Float64Array(memory, i * ENTRY_SIZE, 2).set([time, -time]);
    new Int32Array(memory, i * ENTRY_SIZE + 16, 6).set([1, 2, 3, 4, 5, 6].map((k) => 10 * i + k));
  });
  return memory;
}

test("entries come out as they were written, one by one or many at once, and are gone after they were drained", () => {
  const pieces = fc.array(fc.nat({ max: 3 }), { maxLength: 8 });
  fc.assert(
    fc.property(pieces, (counts) => {
      const total = counts.reduce((sum, count) => sum + count, 0);
      const memory = written(Array.from({ length: total }, (_, i) => i / 8));
      const log = new EventLog();
      let before = 0;
      for (const count of counts) {
        log.take(memory, before * ENTRY_SIZE, count);
        before += count;
      }
      const entries = [...log];
      expect(entries.map(({ time }) => time)).toEqual(Array.from({ length: total }, (_, i) => i / 8));
      expect(entries.map(({ boundTime }) => -boundTime + 0)).toEqual(entries.map(({ time }) => time));
      expect(entries.map(({ resource, boundBy }) => boundBy - resource)).toEqual(entries.map(() => 5));
      expect(log.drain()).toEqual(entries);
      expect([...log]).toEqual([]);
    }),
  );
});
