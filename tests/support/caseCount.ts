// How many random cases every property takes: 100 in `npm test`, 1,000 in `npm run test:long`. Set up before each file of tests.
import * as fc from "fast-check";
import { inject } from "vitest";

declare module "vitest" {
  export interface ProvidedContext {
    readonly caseCount: number;
  }
}

export const caseCount = inject("caseCount");

fc.configureGlobal({ numRuns: caseCount });
