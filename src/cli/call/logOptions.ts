// Options of commands that read a log.
import type { OptionSpec } from "./command.ts";

export const columnOption: OptionSpec = {
  flags: "--column <role=name>",
  meaning:
    'what a column holds: station, step, duration, time, date, start, end, state, event, cause or run, such as "duration=Cycle time"; repeatable',
  repeatable: true,
};
export const stopOption: OptionSpec = {
  flags: "--stop <name>",
  meaning: "a step or state of the log that is a stop, such as a fault by its name; repeatable",
  repeatable: true,
};
export const stepOption: OptionSpec = {
  flags: "--step <name>",
  meaning: 'a step of the log although its name looks like a stop or a wait, such as "hold pressure"; repeatable',
  repeatable: true,
};
export const zoneOption: OptionSpec = {
  flags: "--zone <name>",
  meaning: "time zone of local times in the log, such as Europe/Berlin; daylight time is then taken into account",
};
export const intoOption: OptionSpec = {
  flags: "--into <scenario>",
  meaning: "write the distributions into a copy of this scenario; its comments and all other lines stay",
};
export const asOption: OptionSpec = {
  flags: "--as <file>",
  meaning: "name of the copy (default: the scenario's name with -fitted); the scenario's own name changes it in place",
};
export const fitOutOption: OptionSpec = {
  flags: "--out <folder>",
  meaning: "folder for the files that come out (default: reports/<log name>-fit)",
};
