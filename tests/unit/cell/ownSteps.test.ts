// Extra steps come after the step that the scenario names, in the order in which it lists them.
import { expect, test } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { fixedCell } from "../../support/fixedCell.ts";

const time = { kind: "fixed", value: 0.1 } as const;

function order(
  own: readonly (readonly [name: string, after: string])[],
  by: "machine" | "operator",
): readonly string[] {
  const station = { recharge: 4, drop: 1.8, close: 0.6, cool: 8, remove: 0.8, by };
  const cell = fixedCell({ stations: [station], shift: 0.25, operators: 1 });
  const extra = own.map(([name, after]) => ({ name, after, time }));
  const [first] = cell.stations;
  const { program } = planCell({ ...cell, stations: [{ ...first!, extra }] });
  return program.table.processes.find(({ name }) => name === first!.name)!.steps.map(({ name }) => name);
}

test.each(["machine", "operator"] as const)(
  "extra steps follow the same step in the listed order, and may follow each other, removal by %s",
  (by) => {
    const steps = order(
      [
        ["lock", "close"],
        ["pin down", "close"],
        ["check lock", "lock"],
        ["strip tail", "remove"],
        ["wipe", "remove"],
        ["prime", "drop"],
      ],
      by,
    );
    const release = by === "operator" ? ["let go"] : [];
    expect(steps).toEqual(
      [
        "shift to port",
        "drop",
        "prime",
        "close",
        "lock",
        "check lock",
        "pin down",
        "blow",
        "cool",
        "vent",
        "open",
        "remove",
      ].concat(release, ["strip tail", "wipe"]),
    );
  },
);
