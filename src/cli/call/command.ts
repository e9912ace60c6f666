// The description of a command: name, operands, options and an example.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { Host } from "#cli/machine/host.ts";

/** The options as the user gave them. */
export interface Options {
  readonly out?: string;
  readonly name?: string;
  readonly replace?: boolean;
  readonly variant?: readonly string[];
  readonly seed?: string;
  readonly replications?: string;
  readonly length?: string;
  readonly precision?: string;
  readonly jobs?: string;
  readonly units?: UnitSystem;
  readonly stations?: string;
  readonly kind?: string;
  readonly set?: readonly string[];
  readonly lesson?: readonly string[];
  readonly changes?: "few" | "full" | "off";
  readonly sensitivity?: "few" | "full" | "off";
  readonly against?: string;
  readonly vary?: readonly string[];
  readonly best?: boolean;
  readonly by?: string;
  readonly worthwhile?: string;
  readonly need?: string;
  readonly chance?: string;
  readonly confidence?: string;
  readonly shard?: string;
  readonly shifts?: string;
  readonly start?: string;
  readonly order?: readonly string[];
  readonly due?: string;
  readonly levers?: boolean;
  readonly events?: boolean;
  readonly range?: boolean;
  readonly slack?: boolean;
  readonly measured?: string;
  readonly column?: readonly string[];
  readonly stop?: readonly string[];
  readonly step?: readonly string[];
  readonly zone?: string;
  readonly into?: string;
  readonly as?: string;
  readonly margin?: string;
  readonly rename?: readonly string[];
  readonly json?: boolean;
  readonly result?: boolean;
  readonly quiet?: boolean;
  readonly verbose?: boolean;
}

/** Runs the command and returns its exit code. */
export type Act = (operands: readonly string[], options: Options, host: Host) => number | Promise<number>;

export interface OptionSpec {
  /** Such as `-o, --out <folder>`. */
  readonly flags: string;
  readonly meaning: string;
  /** The only values that it takes. */
  readonly choices?: readonly string[];
  /** May be given many times; all values are kept, in their order. */
  readonly repeatable?: true;
}

export interface CommandSpec {
  readonly name: string;
  /** Such as `<file...>`; "" where there is none. */
  readonly operands: string;
  readonly meaning: string;
  readonly example: string;
  readonly options: readonly OptionSpec[];
  /** Words that look like options are operands: `explain --set`. */
  readonly takesAnyWord?: true;
  /** Loads the code of the command when it is called. */
  readonly load: () => Promise<Act>;
}
