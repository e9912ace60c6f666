// Prints why a command failed, with a remedy.
import { CommanderError } from "commander";
import { plannedCommands, plannedOptions } from "#cli/commands/commands.ts";
import { exitCode } from "#cli/machine/exitCode.ts";
import type { Host } from "#cli/machine/host.ts";
import { MachineFailure } from "#cli/machine/machineFailure.ts";
import { plainText } from "#foundation/plainText.ts";
import { version } from "#cli/machine/version.ts";

function report(host: Host, message: string, details: readonly (readonly [string, string])[]): void {
  const lines = details.map(([label, words]) => `    ${label.padEnd(8)}  ${plainText(words)}\n`);
  host.report(`blowcell: ${host.paint("error", "red", "error")}: ${plainText(message)}\n${lines.join("")}`);
}

/** Always last: where the failure is explained. */
function reportMore(host: Host, topic: string): void {
  host.report(`More: blowcell explain ${topic}\n`);
}

const topicsOfCall: Readonly<Record<string, string>> = {
  "commander.unknownOption": "options",
  "commander.optionMissingArgument": "options",
};

/** The quoted name in the parser's message where that command is planned. */
function plannedName(message: string): string | undefined {
  const named = /'([^']*)'/.exec(message)?.[1] ?? "";
  return [...plannedCommands, ...plannedOptions].find((planned) => planned === named);
}

function reportWrongCall(error: CommanderError, host: Host, helpCall: string): number {
  // Help and version arrive here as well; they have already printed.
  if (error.exitCode === 0) return exitCode.done;
  if (error.code === "commander.help") return exitCode.wrongInput;
  const planned = plannedName(error.message);
  const message = error.message.replace(/^error: /, "").replaceAll("\n", " ");
  const remedy = `${helpCall} shows what can be asked for.`;
  report(host, planned === undefined ? message : `${planned} is planned but not built yet`, [["remedy", remedy]]);
  reportMore(host, topicsOfCall[error.code] ?? "commands");
  return exitCode.wrongInput;
}

function reportOurFault(error: unknown, host: Host, argv: readonly string[]): number {
  const remedy = "Please report it with these lines and the scenario to the authors; --verbose adds where it happened.";
  report(host, "a fault of blowcell itself, not of your input", [
    ["fault", error instanceof Error ? `${error.name}: ${error.message}` : String(error)],
    ["call", ["blowcell", ...argv].join(" ")],
    ["version", `${version} on ${host.system}`],
    ["remedy", remedy],
  ]);
  if (argv.includes("--verbose") && error instanceof Error) host.report(`${error.stack ?? ""}\n`);
  reportMore(host, `exit code ${exitCode.ourFault}`);
  return exitCode.ourFault;
}

/** Prints the failure and returns the exit code. `helpCall` is the call that prints help. */
export function reportFailure(
  error: unknown,
  host: Host,
  argv: readonly string[],
  helpCall = "blowcell --help",
): number {
  if (error instanceof CommanderError) return reportWrongCall(error, host, helpCall);
  if (!(error instanceof MachineFailure)) return reportOurFault(error, host, argv);
  report(host, error.message, [["remedy", error.remedy]]);
  reportMore(host, error.topic);
  return exitCode.machineFailed;
}
