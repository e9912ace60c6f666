// The layouts that the options of a scenario make: none, each one, and the combinations of their groups.
import type { OptionSpec } from "./scenario.ts";

/** The file as it stands first, then by the number of options. At most one of each group; one without a group stands alone. */
export function optionSets(options: readonly OptionSpec[]): readonly (readonly OptionSpec[])[] {
  const alone = options.filter(({ group }) => group === undefined).map((option) => [option]);
  const groups = new Set(options.flatMap(({ group }) => group ?? []));
  const combined = [...groups].reduce<readonly (readonly OptionSpec[])[]>(
    (sets, name) => {
      const own = options.filter(({ group }) => group === name);
      return [...sets, ...sets.flatMap((set) => own.map((option) => [...set, option]))];
    },
    [[]],
  );
  return [...combined, ...alone].toSorted((one, other) => one.length - other.length);
}

/** How many there are: every group may have no option or one of its own. */
export function optionSetCount(options: readonly OptionSpec[]): number {
  const grouped = options.filter(({ group }) => group !== undefined);
  const groups = new Set(grouped.map(({ group }) => group));
  const sizes = [...groups].map((name) => grouped.filter(({ group }) => group === name).length);
  return sizes.reduce((product, size) => product * (size + 1), 1) + options.length - grouped.length;
}
