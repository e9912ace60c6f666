// Plants mutants whose fate is known: tests notice the wrong one and not the harmless one, and one without end is stopped.
import { readFileSync } from "node:fs";
import path from "node:path";
import { expect, it } from "vitest";
import { mutantsOf } from "./mutants.mjs";
import { tryTogether } from "./together.mjs";

function planted(id: number, file: string, found: string, to: string) {
  const text = readFileSync(path.resolve(file), "utf8");
  const at = text.indexOf(found);
  const mutant = mutantsOf(text).find((each) => each.start >= at && each.start < at + found.length && each.to === to);
  if (!mutant) throw new Error(`no mutant in ${found}`);
  return { ...mutant, id, file };
}

it("tells mutants that a test notices from those that change nothing", async () => {
  const file = "src/physics/air/exhaustTime.ts";
  const mutants = [
    // A bottle that is already empty takes a second.
    planted(1, file, "return 0", "1"),
    // The sum of two integrals is the same wherever they meet.
    planted(2, file, "Math.max(to", "min"),
    // A calendar that looks for days further and further back.
    planted(3, "src/engine/calendar.ts", "day++", "--"),
  ];
  const lines: string[] = [];
  const means = { tests: [], cases: 5, seconds: 5, said: (line: string) => void lines.push(line) };
  const files = ["tests/unit/physics/air.test.ts", "tests/unit/engine/calendar.test.ts"];
  const killed = await tryTogether(mutants, { ...means, files });
  expect(new Set(killed.keys())).toEqual(new Set([1, 3]));
  expect(killed.get(1)).toContain("air.test.ts");
  expect(lines).toEqual([]);
});
