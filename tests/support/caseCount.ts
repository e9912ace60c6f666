// How many random cases every property takes: 100 in `npm test`, 1,000 in `npm run test:long`. Set up before each file of tests.
import * as fc from "fast-check";
import { inject } from "vitest";

declare module "vitest" {
  export interface ProvidedContext {
    readonly caseCount: number;
  }
}

export const caseCount = inject("caseCount");

// A failing case is made simpler for no longer than this: where each one is a long simulation, that would go on for hours.
const interruptAfterTimeLimit = 300_000;

fc.configureGlobal({ numRuns: caseCount, interruptAfterTimeLimit, markInterruptAsFailure: true });
