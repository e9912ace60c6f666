// Options that several commands share.
import type { OptionSpec, Options } from "./command.ts";
import { orderSettings, orderTexts } from "./orderOptions.ts";

export const verboseOption: OptionSpec = { flags: "--verbose", meaning: "print stages, seconds and replications" };
export const quietOption: OptionSpec = { flags: "--quiet", meaning: "print only errors" };
export const jsonOption: OptionSpec = { flags: "--json", meaning: "print the result as JSON and nothing else" };
export const resultOption: OptionSpec = {
  flags: "--result",
  meaning: "print the schema of what --json prints instead",
};
export const outOption: OptionSpec = {
  flags: "--out <folder>",
  meaning:
    "folder for the files that come out (default: reports/<scenario name>, with the settings of the call in short)",
};
export const compareOutOption: OptionSpec = {
  flags: "--out <folder>",
  meaning:
    "folder for the files that come out (default: reports/<base>-against-<others>, with the settings of the call in short)",
};
export const sweepOutOption: OptionSpec = {
  flags: "--out <folder>",
  meaning: "folder for the files that come out (default: reports/<scenario name>-sweep, with the settings in short)",
};
export const pageOutOption: OptionSpec = {
  flags: "--out <file or folder>",
  meaning: "the page, such as line-2.html, or a folder for page.html (default: reports/<scenario names>)",
};
export const pageReplaceOption: OptionSpec = {
  flags: "--replace",
  meaning: "replace a page of a different call, or any other file; the same call is replaced without it",
};
export const lessonOption: OptionSpec = {
  flags: "--lesson <file>",
  meaning: "a lesson of your own, beside the shipped ones; repeatable",
  repeatable: true,
};
export const varyOption: OptionSpec = {
  flags: "--vary <path=values>",
  meaning:
    'vary a value: "stations.*.steps.cool=7..10 s by 0.5 s", "=7..10 s/7" for 7 points, or a list "=7 s,8 s"; "-1 s,+1 s" shifts it; repeatable for all combinations',
  repeatable: true,
};
export const shardOption: OptionSpec = {
  flags: "--shard <i/n>",
  meaning: "make only share i of n of the points, such as 1/3, for several machines; merge joins the shares",
};
export const bestOption: OptionSpec = {
  flags: "--best",
  meaning: "choose the best point, as the command choose does; --replications is then the most of one point",
};
export const byOption: OptionSpec = {
  flags: "--by <measure>",
  meaning:
    'what the best layout is best in: "good parts per hour" (default), "cost per 1,000" or another measure of throughput.csv or cost.csv',
};
export const worthwhileOption: OptionSpec = {
  flags: "--worthwhile <difference>",
  meaning:
    'a smaller difference does not matter: a number in the unit of the measure, such as "12", or a share of the first layout (default: "1 %")',
};
export const needOption: OptionSpec = {
  flags: "--need <parts in time>",
  meaning:
    'drop layouts that cannot make so many good parts, such as "200000 parts in 5 d"; a run is then as long as this time and counts from its start',
};
export const chanceOfNeedOption: OptionSpec = {
  flags: "--chance <share>",
  meaning: "the least chance with which a run meets the need, 50 to 99 % (default: 95 %)",
};
export const confidenceOption: OptionSpec = {
  flags: "--confidence <share>",
  meaning: "how sure the choice is, 80 to 99.9 % (default: 95 %)",
};
export const mostReplicationsOption: OptionSpec = {
  flags: "--replications <count>",
  meaning: "most replications of one layout (default: 2000); the choice needs fewer in most cases",
};
export const chooseOutOption: OptionSpec = {
  flags: "--out <folder>",
  meaning: "folder for the files that come out (default: reports/<first layout>-choose, with the settings in short)",
};
export const nameOption: OptionSpec = {
  flags: "--name <name>",
  meaning: "name of the results and of their folder in reports, instead of the settings in short",
};
export const replaceOption: OptionSpec = {
  flags: "--replace",
  meaning: "replace the results of a different run in the folder; the same run is replaced without it",
};
export const variantOption: OptionSpec = {
  flags: "--variant <name: path=value>",
  meaning:
    'compare each file also with these settings, such as "8 s: stations.*.steps.cool=8 s"; ";" separates several settings; a value may be anything that --set takes; repeatable',
  repeatable: true,
};
export const againstOption: OptionSpec = {
  flags: "--against <layout>",
  meaning: "compare each layout with the first, the previous, all or one by its name (default: first)",
};
export const eventsOption: OptionSpec = {
  flags: "--events",
  meaning: "also write every event and every shot (events.csv, shots.csv)",
};
export const rangeOption: OptionSpec = {
  flags: "--range",
  meaning: "also show the cooling time over the ranges of the material's values",
};
export const slackOption: OptionSpec = {
  flags: "--slack",
  meaning: "also test how much longer leading steps may take before output falls by 1 % (slack.csv)",
};
export const setOption: OptionSpec = {
  flags: "--set <path=value>",
  meaning:
    'change a value, such as "stations.*.steps.cool=7 s"; -1 s shifts it, +10 % and *0.9 scale it, null removes it; repeatable',
  repeatable: true,
};
export const measuredOption: OptionSpec = {
  flags: "--measured <what>",
  meaning: 'compare the model with the real cell: "395 shots per h", "790 parts per h" or "cycle 12.2 s"',
};
export const seedOption: OptionSpec = { flags: "--seed <text>", meaning: "seed of the random numbers" };
export const replicationsOption: OptionSpec = {
  flags: "--replications <count>",
  meaning: "number of replications, each with its own random numbers",
};
export const precisionOption: OptionSpec = {
  flags: "--precision <share>",
  meaning:
    'make 10 replications or more, until the 95 % half width of good parts per hour, in compare of the differences, is at most this share of it, such as "1 %"',
};
export const jobsOption: OptionSpec = {
  flags: "--jobs <count>",
  meaning: "worker threads for long work (default: one a processor); the results are the same for any number",
};
export const unitsOption: OptionSpec = {
  flags: "--units <system>",
  meaning: "units of text and report.html: si, or us for lb, in, psi, °F (default: si); CSV and JSON stay in SI",
  choices: ["si", "us"],
};
export const changesOption: OptionSpec = {
  flags: "--changes <depth>",
  meaning:
    "what one change of the cell buys: few replications of each (default), full for all replications of all changes, or off",
  choices: ["few", "full", "off"],
};
export const sensitivityOption: OptionSpec = {
  flags: "--sensitivity <depth>",
  meaning:
    "reruns with a leading step shorter and longer: few, at most half the work of the run (default), full for all, or off",
  choices: ["few", "full", "off"],
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

/** A change of the scenario by an option of the call. */
export interface CalledSetting {
  readonly option: string;
  readonly text: string;
}

/** All changes of the scenario by the call, in their order. */
export function calledSettings(options: Options): readonly CalledSetting[] {
  const { run } = settingsOf(options);
  const ordered = new Map(orderSettings(options).map(({ option, text }) => [option, { option, text }]));
  return [
    ...ordered.values(),
    ...(options.set ?? []).map((text) => ({ option: "--set", text })),
    ...(options.measured === undefined ? [] : [{ option: "--measured", text: options.measured }]),
    ...Object.entries(run).map(([name, text]) => ({ option: `--${name}`, text })),
  ];
}

/** The options that change the run and not the cell, each as `path=value`. */
export function runTexts(options: Options): readonly string[] {
  return Object.entries(settingsOf(options).run).map(([key, text]) => `run.${key}=${text}`);
}

/** All changes of the scenario by the call, each as `path=value`. */
export function callTexts(options: Options): readonly string[] {
  return [...shownSettings(options), ...runTexts(options)];
}

/** Those that change the cell; an order and its work shifts as they were written. */
export function shownSettings(options: Options): readonly string[] {
  return [...orderTexts(options), ...settingsOf(options).set.slice(orderSettings(options).length)];
}

interface Settings {
  readonly set: readonly string[];
  readonly run: Readonly<Partial<Record<"seed" | "replications" | "length" | "precision", string>>>;
}

/** The same as settings for the reader; an option of its own name comes last and wins. */
export function settingsOf(options: Options): Settings {
  const { set: own = [], measured, seed, replications, length, precision } = options;
  const set = [
    ...orderSettings(options).map(({ setting }) => setting),
    ...own,
    ...(measured === undefined ? [] : [measuredSetting(measured)]),
  ];
  const given = Object.entries({ seed, replications, length, precision }).filter(([, text]) => text !== undefined);
  return { set, run: Object.fromEntries(given) };
}

/** "395 shots per h" as `measured.shots=395 per h`; without a known word the reader names the keys. */
function measuredSetting(text: string): string {
  const word = /\b(shots?|parts?|cycle)\b/u.exec(text)?.[1];
  if (word === undefined) return `measured=${text}`;
  const key = word === "cycle" ? word : `${word.replace(/s$/u, "")}s`;
  return `measured.${key}=${text.replace(word, "").trim().replaceAll(/\s+/gu, " ")}`;
}
