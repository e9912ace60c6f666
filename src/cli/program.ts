// Parses a call, loads its command and returns the exit code.
import { Command, Option } from "commander";
import type { CommandSpec, OptionSpec, Options } from "#cli/call/command.ts";
import { builtCommands } from "#cli/commands/commands.ts";
import { exitCode, exitMeanings } from "#cli/machine/exitCode.ts";
import type { Host } from "#cli/machine/host.ts";
import { reportFailure } from "./reportFailure.ts";
import { version } from "#cli/machine/version.ts";

const description = "Simulates a multi-station extrusion blow molding cell: output, waits and what sets the pace.";

/** Below the commands: an example of each, then what an exit code means. */
function afterHelp(commands: readonly CommandSpec[]): string {
  const examples = commands.map(({ example }) => `  ${example}`);
  const exits = exitMeanings.map(({ code, meaning }) => `${String(code).padStart(5)}  ${meaning}`);
  return ["", "Examples:", ...examples, "", "Exit codes:", ...exits, ""].join("\n");
}

function describeOption({ flags, meaning, choices, repeatable }: OptionSpec): Option {
  const option = new Option(flags, meaning);
  if (choices !== undefined) return option.choices(choices);
  if (repeatable === undefined) return option;
  return option.argParser<readonly string[]>((value, earlier) => [...(earlier ?? []), value]);
}

type Finish = (code: number) => void;

function addCommand(program: Command, spec: CommandSpec, host: Host, finish: Finish): void {
  const command = program.command(`${spec.name} ${spec.operands}`.trim()).description(spec.meaning);
  for (const option of spec.options) command.addOption(describeOption(option));
  if (spec.takesAnyWord === true) command.allowUnknownOption();
  command.addHelpText("after", `\nExample:\n  ${spec.example}\n`);
  command.action(async () => {
    const act = await spec.load();
    finish(await act(command.args, command.opts<Options>(), host));
  });
}

function describeProgram(commands: readonly CommandSpec[], host: Host, finish: Finish): Command {
  const program = new Command("blowcell")
    .description(description)
    .version(version, "--version", "print the version")
    .helpOption("-h, --help", "show this help")
    .helpCommand(false)
    .addHelpText("after", afterHelp(commands))
    .exitOverride()
    .configureOutput({
      writeOut: (text) => host.print(text),
      writeErr: (text) => host.report(text),
      getOutHelpWidth: () => host.width,
      getErrHelpWidth: () => host.width,
      // reportFailure prints the message.
      outputError: () => undefined,
    });
  for (const spec of commands) addCommand(program, spec, host, finish);
  return program;
}

/** Never throws; answers with the exit code. */
export async function runProgram(
  argv: readonly string[],
  host: Host,
  commands: readonly CommandSpec[] = builtCommands,
): Promise<number> {
  let code: number = exitCode.done;
  const called = commands.filter(({ name }) => name === argv[0]);
  try {
    // A call of one command does not need the descriptions of the others.
    const program = describeProgram(called.length > 0 ? called : commands, host, (answer) => (code = answer));
    await program.parseAsync([...argv], { from: "user" });
    return code;
  } catch (error) {
    return reportFailure(error, host, argv, called[0] && `blowcell ${called[0].name} --help`);
  }
}
