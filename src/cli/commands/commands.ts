// The list of commands.
import type { CommandSpec } from "#cli/call/command.ts";
import {
  againstOption,
  changesOption,
  compareOutOption,
  eventsOption,
  jobsOption,
  jsonOption,
  kindOption,
  lengthOption,
  outOption,
  precisionOption,
  quietOption,
  rangeOption,
  nameOption,
  replaceOption,
  resultOption,
  variantOption,
  replicationsOption,
  seedOption,
  sensitivityOption,
  setOption,
  measuredOption,
  slackOption,
  unitsOption,
  stationsOption,
  verboseOption,
} from "#cli/call/options.ts";

const changes = [seedOption, replicationsOption, lengthOption, precisionOption, setOption];
const talk = [jsonOption, quietOption, verboseOption];

export const builtCommands: readonly CommandSpec[] = [
  {
    name: "check",
    operands: "<file...>",
    meaning: "check scenario files; show step times, the ideal cycle, slack and the process window",
    example: "blowcell check scenarios/two-station.yaml",
    options: [setOption, rangeOption, unitsOption, ...talk],
    load: async () => (await import("./check.ts")).check,
  },
  {
    name: "run",
    operands: "<file>",
    meaning: "simulate a cell: output, waits and pace; writes report.html and CSV files",
    example: 'blowcell run scenarios/two-station.yaml --set "stations.left.steps.cool=7 s"',
    options: [
      outOption,
      nameOption,
      replaceOption,
      eventsOption,
      slackOption,
      measuredOption,
      ...changes,
      sensitivityOption,
      changesOption,
      jobsOption,
      unitsOption,
      ...talk,
    ],
    load: async () => (await import("./run.ts")).run,
  },
  {
    name: "compare",
    operands: "<file...>",
    meaning: "simulate 2 to 50 cells with common random numbers and compare them",
    example: "blowcell compare scenarios/one-station.yaml scenarios/two-station.yaml",
    options: [
      variantOption,
      againstOption,
      compareOutOption,
      nameOption,
      replaceOption,
      ...changes,
      jobsOption,
      unitsOption,
      ...talk,
    ],
    load: async () => (await import("./compare.ts")).compare,
  },
  {
    name: "new",
    operands: "<file>",
    meaning: "write a commented starter scenario; a file that is there is never overwritten",
    example: "blowcell new mine.yaml --stations 2 --kind continuous",
    options: [stationsOption, kindOption, quietOption, verboseOption],
    load: async () => (await import("./new.ts")).newScenario,
  },
  {
    name: "explain",
    operands: "[word...]",
    meaning: "explain a key, state, code, column, indicator, command or term; alone it lists the topics",
    example: "blowcell explain holding a full shot",
    options: talk,
    takesAnyWord: true,
    load: async () => (await import("./explain.ts")).explain(builtCommands),
  },
  {
    name: "schema",
    operands: "",
    meaning: "print the JSON Schema of a scenario file, for editors that complete and check while you type",
    example: "blowcell schema > scenario.schema.json",
    options: [resultOption, verboseOption],
    load: async () => (await import("./printSchema.ts")).printSchema,
  },
];

/** Refused by name and absent from --help. */
export const plannedCommands: readonly string[] = ["sweep", "merge", "promise", "fit", "match", "page"];
export const plannedOptions: readonly string[] = ["--best", "--worthwhile", "--excel", "--vary", "--shard"];
