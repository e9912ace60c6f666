// Single steps of a selection and of the screening for a need, by hand.
import { describe, expect, it } from "vitest";
import { feasibility } from "#analysis/selection/feasibility.ts";
import { fixedSizeReplications } from "#analysis/selection/fixedSizeReplications.ts";
import { kimNelson, type SelectionGoal } from "#analysis/selection/kimNelson.ts";
import { boundaryAt, nextDrop } from "#analysis/selection/layoutPairs.ts";
import { selectionConstants } from "#analysis/selection/selectionConstants.ts";

const goal: SelectionGoal = {
  better: "more",
  worthwhile: 2,
  confidence: 0.95,
  firstReplications: 4,
  mostReplications: 50,
};

describe("the screening for a need", () => {
  const even = { chance: 0.5, errorShare: 0.25, mostReplications: 100 };
  const met = (count: number) => Array.from({ length: count }, () => true);

  it("asks for as many runs as the layout that may be decided first", () => {
    // By hand: the ratio doubles with each run; bounds of 8, so that three runs decide.
    expect(feasibility([met(2), met(1)], even).more).toBe(1);
    expect(feasibility([met(3), met(1)], even).more).toBe(2);
    expect(feasibility([met(3), met(3)], even).more).toBe(0);
  });
});

describe("the selection of one layout", () => {
  it("takes no further replications", () => {
    const alone = [[1, 2], [9]];
    expect(kimNelson(alone, goal, [1])).toEqual({
      kind: "selected",
      layout: 0,
      tied: [],
      dropped: [],
      replications: 2,
    });
    expect(fixedSizeReplications([[1, 2, 3, 4]], goal)).toBe(4);
  });
});

describe("the lead that drops a layout", () => {
  const pair = (behind: number, closing: number) => ({ layout: 0, rival: 1, behind, closing });

  it("shrinks with each replication, to 0", () => {
    expect([10, 29, 30, 40].map((replications) => boundaryAt(pair(0, 30), replications, 4))).toEqual([40, 2, 0, 0]);
  });

  it("is reached where leads go on as they did", () => {
    // By hand: 20 in 10 replications are 2 each; 2 r = 4/2 (30 − r) at r = 15.
    expect(nextDrop([pair(20, 30)], 10, 4)).toBe(15);
    expect(nextDrop([pair(-20, 30), pair(0, 30)], 10, 4)).toBe(15);
    expect(nextDrop([pair(0, 30)], 10, 4)).toBe(30);
    // At least one more.
    expect(nextDrop([pair(900, 30)], 10, 4)).toBe(11);
  });

  it("drops at once where the first stage shows it, and names the layout with the largest lead", () => {
    const values = [
      [9, 9, 9, 9],
      [0, 0, 0, 0],
      [6, 6, 6, 6],
    ];
    expect(kimNelson(values, goal)).toEqual({
      kind: "selected",
      layout: 0,
      tied: [],
      dropped: [
        { layout: 1, replication: 4, by: 0 },
        { layout: 2, replication: 4, by: 0 },
      ],
      replications: 4,
    });
    expect(kimNelson(values, { ...goal, better: "less" })).toMatchObject({ kind: "selected", layout: 1 });
  });
});

describe("what a selection is asked for", () => {
  it("must make sense", () => {
    const values = [[1], [2]];
    expect(() => kimNelson(values, { ...goal, worthwhile: 0 })).toThrow("worthwhile");
    expect(() => kimNelson(values, { ...goal, mostReplications: 3 })).toThrow("cap");
    expect(() => kimNelson(values, goal, [0, 1])).toThrow("needs a layout");
    expect(() => selectionConstants(1, 0.95, 20)).toThrow("two layouts");
    expect(() => selectionConstants(2, 0.5, 20)).toThrow("confidence");
    expect(() => selectionConstants(2, 0.95, 1)).toThrow("two replications");
    expect(() => feasibility([[]], { chance: 1, errorShare: 0.1, mostReplications: 5 })).toThrow("wanted chance");
  });
});
