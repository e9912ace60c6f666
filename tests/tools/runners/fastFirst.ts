// Runs the fast folders of tests before the slow ones, so that a simple mistake shows within seconds.
import { BaseSequencer, type TestSpecification } from "vitest/node";

const rooms = ["/tests/house/", "/tests/unit/", "/tests/support/", "/tests/cli/", "/tests/golden/", "/tests/theory/"];

function rank(specification: TestSpecification): number {
  const found = rooms.findIndex((room) => specification.moduleId.includes(room));
  return found === -1 ? rooms.length : found;
}

export default class FastFirst extends BaseSequencer {
  override async sort(specifications: TestSpecification[]): Promise<TestSpecification[]> {
    // oxlint-disable-next-line unicorn/no-array-sort -- the sequencer's own method, not an array's
    const sorted = await super.sort(specifications);
    return sorted.toSorted((left, right) => rank(left) - rank(right));
  }
}
