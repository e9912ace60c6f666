// The options that several commands share, worded once.
import type { OptionSpec, Options } from "./command.ts";

export const verboseOption: OptionSpec = { flags: "--verbose", meaning: "tell stages, seconds and replications" };
export const quietOption: OptionSpec = { flags: "--quiet", meaning: "tell only errors" };
export const jsonOption: OptionSpec = { flags: "--json", meaning: "print the result as JSON and nothing else" };
export const resultOption: OptionSpec = {
  flags: "--result",
  meaning: "print the schema of what --json prints instead",
};
export const outOption: OptionSpec = {
  flags: "--out <folder>",
  meaning: "folder for the files that come out (default: reports/<scenario name>)",
};
export const compareOutOption: OptionSpec = {
  flags: "--out <folder>",
  meaning: "folder for the files that come out (default: reports/<base>-against-<others>)",
};
export const eventsOption: OptionSpec = {
  flags: "--events",
  meaning: "also write every event and every shot (events.csv, shots.csv)",
};
export const setOption: OptionSpec = {
  flags: "--set <path=value>",
  meaning: "change one value of the scenario, such as stations.left.steps.cool=7 s; repeatable",
  repeatable: true,
};
export const seedOption: OptionSpec = { flags: "--seed <text>", meaning: "seed of the random numbers" };
export const replicationsOption: OptionSpec = {
  flags: "--replications <count>",
  meaning: "how many times the run is repeated with other random numbers",
};
export const precisionOption: OptionSpec = {
  flags: "--precision <share>",
  meaning: 'replicate until the 95 % half width of good parts per hour is at most this share of it, such as "1 %"',
};
export const jobsOption: OptionSpec = {
  flags: "--jobs <count>",
  meaning: "worker threads for long work (default: one a processor); the results are the same for any number",
};
export const lengthOption: OptionSpec = {
  flags: "--length <time>",
  meaning: 'simulated time of one replication, such as "8 h"',
};

export const stationsOption: OptionSpec = { flags: "--stations <count>", meaning: "number of stations (default: 2)" };
export const kindOption: OptionSpec = {
  flags: "--kind <kind>",
  meaning: "reciprocating-screw (default), accumulator-head or continuous",
};

/** A change of the scenario that a call asks for, and the option that asks for it. */
export interface CalledSetting {
  readonly option: string;
  /** As --set takes it. */
  readonly text: string;
}

/** Everything by which a call changes its scenario; an option of its own name has the last word. */
export function calledSettings(options: Options): readonly CalledSetting[] {
  const { set = [], seed, replications, length, precision } = options;
  // A seed is a text even where it looks like a number; JSON's quotes are YAML's too.
  const values = { seed: seed === undefined ? undefined : JSON.stringify(seed), replications, length, precision };
  return [
    ...set.map((text, i) => ({ option: `--set ${i + 1}`, text })),
    ...Object.entries(values).flatMap(([name, value]) =>
      value === undefined ? [] : [{ option: `--${name}`, text: `run.${name}=${value}` }],
    ),
  ];
}

export function settingsOf(options: Options): readonly string[] {
  return calledSettings(options).map(({ text }) => text);
}
