// The stages of a call, told with --verbose: what was done, and how many seconds it took.
import type { Options } from "#cli/call/command.ts";
import type { Host } from "#cli/machine/host.ts";
import type { Labor } from "./labor.ts";

export interface Stages {
  /** Ends a stage. */
  tell(what: string): void;
}

export function openStages(options: Options, host: Host): Stages {
  let since = host.seconds();
  return {
    tell(what) {
      const now = host.seconds();
      if (options.verbose === true) host.tell(`${(now - since).toFixed(2)} s  ${what}\n`);
      since = now;
    },
  };
}

/** Which worker threads had a share in the work. */
export function tellTally(labor: Labor, options: Options, host: Host): void {
  if (options.verbose !== true) return;
  const shares = [...labor.tally.values()].toSorted((a, b) => b - a);
  host.tell(
    shares.length === 0 ? "all work in one thread\n" : `${shares.length} workers did ${shares.join(" + ")} tasks\n`,
  );
}
