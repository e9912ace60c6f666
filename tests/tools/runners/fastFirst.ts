// Runs the fast folders of tests before the slow ones, so that a simple mistake shows within seconds, and in a folder the long files first,
// so that none of them is left over alone.
import { BaseSequencer, type TestSpecification } from "vitest/node";

/** The page tests are one long file, so the many files of theory come after it and run at the same time. */
const order = ["house", "unit", "page", "cli", "golden", "theory"].map((folder) => `/tests/${folder}/`);

function rank(specification: TestSpecification): number {
  const found = order.findIndex((folder) => specification.moduleId.includes(folder));
  return found === -1 ? order.length : found;
}

const isLong = ({ moduleId }: TestSpecification): boolean => moduleId.endsWith(".long.test.ts");

export default class FastFirst extends BaseSequencer {
  override async sort(specifications: TestSpecification[]): Promise<TestSpecification[]> {
    // oxlint-disable-next-line unicorn/no-array-sort -- the sequencer's own method, not an array's
    const sorted = await super.sort(specifications);
    return sorted.toSorted((left, right) => rank(left) - rank(right) || Number(isLong(right)) - Number(isLong(left)));
  }
}
