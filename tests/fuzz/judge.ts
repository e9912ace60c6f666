// All oracles on one input; an exception is a fault like any other.
import type { FuzzCase } from "./fuzzCase.ts";
import { judgeReading } from "./readingOracle.ts";
import { judgeCheck, judgeRun } from "./runOracle.ts";

export interface Verdict {
  readonly accepted: boolean;
  readonly faults: readonly string[];
}

/** `depth`: read only, or go on to what `check` or `run` does with an accepted scenario. */
export function judge(input: FuzzCase, depth: "read" | "check" | "run"): Verdict {
  let accepted = false;
  try {
    const { reading, faults } = judgeReading(input);
    const { scenario } = reading;
    accepted = scenario !== undefined;
    if (scenario === undefined || depth === "read") return { accepted, faults };
    const checked = [...faults, ...judgeCheck(scenario)];
    return { accepted, faults: depth === "check" ? checked : [...checked, ...judgeRun(scenario)] };
  } catch (error) {
    return { accepted, faults: [error instanceof Error ? (error.stack ?? error.message) : String(error)] };
  }
}
