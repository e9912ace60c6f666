// Prints an answer with safe characters, unless --quiet is given.
import type { Options } from "#cli/call/command.ts";
import type { Host } from "#cli/machine/host.ts";
import { plainText } from "#foundation/plainText.ts";

export function printAnswer(answer: () => string, options: Options, host: Host): void {
  if (options.quiet === true) return;
  host.print(
    answer()
      .split("\n")
      .map((line) => plainText(line))
      .join("\n"),
  );
}
