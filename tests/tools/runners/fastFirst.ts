// Runs the fast folders of tests before the slow ones, so that a simple mistake shows within seconds.
import { BaseSequencer, type TestSpecification } from "vitest/node";

/** The page tests are few long files, so the many short ones of theory come last and fill both cores. */
const order = ["house", "unit", "page", "cli", "golden", "theory"].map((folder) => `/tests/${folder}/`);

function rank(specification: TestSpecification): number {
  const found = order.findIndex((folder) => specification.moduleId.includes(folder));
  return found === -1 ? order.length : found;
}

/** First in their folder, so that none of them runs alone at the end. */
const isOfLongRun = ({ moduleId }: TestSpecification): boolean => moduleId.endsWith(".long.test.ts");

export default class FastFirst extends BaseSequencer {
  override async sort(specifications: TestSpecification[]): Promise<TestSpecification[]> {
    // oxlint-disable-next-line unicorn/no-array-sort -- the sequencer's own method, not an array's
    const sorted = await super.sort(specifications);
    return sorted.toSorted(
      (left, right) => rank(left) - rank(right) || Number(isOfLongRun(right)) - Number(isOfLongRun(left)),
    );
  }
}
