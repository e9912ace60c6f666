// The stages of a call and their seconds, printed with --verbose.
import type { Options } from "#cli/call/command.ts";
import type { Host } from "#cli/machine/host.ts";
import type { Labor } from "./labor.ts";

export interface Stages {
  /** Ends a stage. */
  report(what: string): void;
}

export function openStages(options: Options, host: Host): Stages {
  let since = host.seconds();
  return {
    report(what) {
      const now = host.seconds();
      if (options.verbose === true) host.report(`${(now - since).toFixed(2)} s  ${what}\n`);
      since = now;
    },
  };
}

/** The worker threads that did tasks. */
export function reportTally(labor: Labor, options: Options, host: Host): void {
  if (options.verbose !== true) return;
  const shares = [...labor.tally.values()].toSorted((a, b) => b - a);
  host.report(
    shares.length === 0 ? "all work in one thread\n" : `${shares.length} workers did ${shares.join(" + ")} tasks\n`,
  );
}
