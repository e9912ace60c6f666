// What the program knows of a command before it loads it: name, operands, options, an example.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { Host } from "#cli/machine/host.ts";

/** As the user gave them; each command takes the ones that it declared. */
export interface Options {
  readonly out?: string;
  readonly seed?: string;
  readonly replications?: string;
  readonly length?: string;
  readonly precision?: string;
  readonly jobs?: string;
  readonly units?: UnitSystem;
  readonly set?: readonly string[];
  readonly events?: boolean;
  readonly json?: boolean;
  readonly result?: boolean;
  readonly quiet?: boolean;
  readonly verbose?: boolean;
}

/** Does the command and answers with its exit code. */
export type Act = (operands: readonly string[], options: Options, host: Host) => number | Promise<number>;

export interface OptionSpec {
  /** In the way of `-o, --out <folder>`. */
  readonly flags: string;
  readonly meaning: string;
  /** The only values that it takes. */
  readonly choices?: readonly string[];
  /** May be given many times; all values are kept, in their order. */
  readonly repeatable?: true;
}

export interface CommandSpec {
  readonly name: string;
  /** In the way of `<file...>`; "" where there is none. */
  readonly operands: string;
  readonly meaning: string;
  readonly example: string;
  readonly options: readonly OptionSpec[];
  /** Only the command that is called is loaded: start-up is felt. */
  readonly load: () => Promise<Act>;
}
