// The time of several resources together, held against a plain look at every instant.
import fc from "fast-check";
import { expect, it } from "vitest";
import { JointTime } from "#engine/jointTime.ts";

const classes = 4;
const classNumber = fc.integer({ min: 0, max: classes - 1 });
const move = fc.record({
  after: fc.integer({ min: 0, max: 9 }),
  resource: fc.integer({ min: 0, max: 2 }),
  to: classNumber,
});

it("is at each instant that of the lowest class present", () => {
  fc.assert(
    fc.property(fc.tuple(classNumber, classNumber, classNumber), fc.array(move), (first, moves) => {
      const now = [...first];
      const joint = new JointTime(classes, now);
      const expected = Array.from({ length: classes }, () => 0);
      let tick = 0;
      for (const { after, resource, to } of moves) {
        expected[Math.min(...now)]! += after;
        tick += after;
        if (to !== now[resource]) joint.move(now[resource]!, to, tick);
        now[resource] = to;
      }
      joint.settle(tick + 5);
      expected[Math.min(...now)]! += 5;
      expect([...joint.ticks]).toEqual(expected);
      joint.restart(tick + 5);
      joint.settle(tick + 7);
      expect([...joint.ticks].reduce((sum, each) => sum + each, 0)).toBe(2);
    }),
  );
});
