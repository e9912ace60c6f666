// Sets how many random cases each property takes: 20 in `npm test`, 500 in `npm run test:long`.
import * as fc from "fast-check";
import { inject } from "vitest";

declare module "vitest" {
  export interface ProvidedContext {
    readonly caseCount: number;
  }
}

export const caseCount = inject("caseCount");

/** True in `npm run test:long`. */
export const isLong = caseCount > 100;

/** The first cases in `npm test`, which must not take long, and all of them in the long run. */
export function firstCases<Case>(cases: readonly Case[], count: number): readonly Case[] {
  return isLong ? cases : cases.slice(0, count);
}

/** For a property whose cases take long: one case in so many, a whole number. */
export const oneIn = (cases: number): number => Math.ceil(caseCount / cases);

/** Milliseconds for a property: it would take hours to shrink a failing case that is a long simulation. */
const interruptAfterTimeLimit = 300_000;

fc.configureGlobal({ numRuns: caseCount, interruptAfterTimeLimit, markInterruptAsFailure: true });
