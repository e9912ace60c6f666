// Says before a long call begins how long it takes and how much it writes.
import { runTrial, trialSpan } from "#analysis/replication/trialSpan.ts";
import { effortOf, type Work } from "#analysis/replication/work.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Options } from "#cli/call/command.ts";
import { aboutTime } from "#cli/machine/timeLeft.ts";
import type { Host } from "#cli/machine/host.ts";

const longCall = 60;
const muchWritten = 50e6;
/** The first estimate is wrong by up to this factor; work that is short in any case is not tried. */
const mostWrong = 20;
const turnsTried = 5000;

/** What follows the replications takes so many times as long: reruns of leading steps, and changes. */
const partOfReruns = 0.5;
const timesOfChanges = 1.2;

interface Around {
  readonly host: Host;
  readonly jobs: number;
}

/** One line to standard error; nothing for a short call. `bytes` of the events that it writes. */
export function announceRun(scenario: Scenario, options: Options, bytes: number, around: Around): void {
  if (options.quiet === true) return;
  const seconds = secondsOfRun(scenario, options, around);
  const words = announcement({ seconds, bytes, jobs: around.jobs });
  if (words !== undefined) around.host.report(`${words}\n`);
}

interface Expected {
  readonly seconds: number;
  readonly bytes: number;
  readonly jobs: number;
}

/** Undefined where it takes at most a minute and 50 MB. */
export function announcement({ seconds, bytes, jobs }: Expected): string | undefined {
  const threads = jobs === 1 ? "one thread" : `${jobs} threads`;
  const lasting = seconds > longCall ? [`takes about ${aboutTime(seconds)} in ${threads}`] : [];
  const written = bytes > muchWritten ? [`writes about ${aboutBytes(bytes)} of events`] : [];
  const parts = [...lasting, ...written];
  return parts.length === 0 ? undefined : `This run ${parts.join(" and ")}.`;
}

function aboutBytes(bytes: number): string {
  const digits = (value: number): string => String(Number(value.toPrecision(2)));
  return bytes < 1e9 ? `${digits(bytes / 1e6)} MB` : `${digits(bytes / 1e9)} GB`;
}

function secondsOfRun(scenario: Scenario, { changes, sensitivity }: Options, { host, jobs }: Around): number {
  const { length, replications } = scenario.run;
  const tasks = Array.from({ length: replications }, (_, i) => ({ replication: i + 1, scale: null }));
  const work: Work = { kind: "replications", scenario, tasks };
  if (effortOf(work) * mostWrong < longCall) return 0;
  const span = trialSpan(scenario, turnsTried);
  const before = host.seconds();
  runTrial(scenario, span);
  const once = ((host.seconds() - before) * length) / span;
  const more = (sensitivity === "off" ? 0 : partOfReruns) + (changes === "off" ? 0 : timesOfChanges);
  return once * Math.ceil(replications / jobs) * (1 + more);
}
