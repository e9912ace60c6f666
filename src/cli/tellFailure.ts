// The last words of a command that did not end well, each to the one who can do something about it.
import { CommanderError } from "commander";
import { plannedCommands, plannedOptions } from "#cli/commands/commands.ts";
import { exitCode } from "#cli/machine/exitCode.ts";
import type { Host } from "#cli/machine/host.ts";
import { MachineFailure } from "#cli/machine/machineFailure.ts";
import { plainText } from "#cli/machine/plainText.ts";
import { version } from "#cli/machine/version.ts";

function tell(host: Host, message: string, details: readonly (readonly [string, string])[]): void {
  const lines = details.map(([label, words]) => `    ${label.padEnd(8)}  ${plainText(words)}\n`);
  host.tell(`blowcell: ${host.paint("error", "red", "error")}: ${plainText(message)}\n${lines.join("")}`);
}

/** Always last: where the failure is explained. */
function tellMore(host: Host, topic: string): void {
  host.tell(`More: blowcell explain ${topic}\n`);
}

const topicsOfCall: Readonly<Record<string, string>> = {
  "commander.unknownOption": "options",
  "commander.optionMissingArgument": "options",
};

/** The name in quotes in the parser's message, where it is one that is planned. */
function plannedName(message: string): string | undefined {
  const named = /'([^']*)'/.exec(message)?.[1] ?? "";
  return [...plannedCommands, ...plannedOptions].find((planned) => planned === named);
}

function tellWrongCall(error: CommanderError, host: Host, helpCall: string): number {
  // Help and version leave by this way too, having said all that there is to say.
  if (error.exitCode === 0) return exitCode.done;
  if (error.code === "commander.help") return exitCode.wrongInput;
  const planned = plannedName(error.message);
  const message = error.message.replace(/^error: /, "").replaceAll("\n", " ");
  const remedy = `${helpCall} shows what can be asked for.`;
  tell(host, planned === undefined ? message : `${planned} is planned but not built yet`, [["remedy", remedy]]);
  tellMore(host, topicsOfCall[error.code] ?? "commands");
  return exitCode.wrongInput;
}

function tellOurFault(error: unknown, host: Host, argv: readonly string[]): number {
  const remedy = "Please report it with these lines and the scenario to the authors; --verbose adds where it happened.";
  tell(host, "a fault of blowcell itself, not of your input", [
    ["fault", error instanceof Error ? `${error.name}: ${error.message}` : String(error)],
    ["call", ["blowcell", ...argv].join(" ")],
    ["version", `${version} on ${host.system}`],
    ["remedy", remedy],
  ]);
  if (argv.includes("--verbose") && error instanceof Error) host.tell(`${error.stack ?? ""}\n`);
  tellMore(host, `exit code ${exitCode.ourFault}`);
  return exitCode.ourFault;
}

/** Tells what went wrong and answers with the exit code. `helpCall` is the call that would have helped. */
export function tellFailure(error: unknown, host: Host, argv: readonly string[], helpCall = "blowcell --help"): number {
  if (error instanceof CommanderError) return tellWrongCall(error, host, helpCall);
  if (!(error instanceof MachineFailure)) return tellOurFault(error, host, argv);
  tell(host, error.message, [["remedy", error.remedy]]);
  tellMore(host, error.topic);
  return exitCode.machineFailed;
}
