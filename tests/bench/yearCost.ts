// What a simulated year of the two-station cell costs, from an empty process to its record.
import path from "node:path";
import type { Figure } from "./figure.ts";
import { median } from "./median.ts";
import { runNode, type Places } from "./places.ts";

interface YearUse {
  readonly seconds: number;
  readonly megabytes: number;
}

export function yearCost({ folder, scenario }: Places, rounds: number): readonly Figure[] {
  const uses = Array.from(
    { length: rounds },
    () => JSON.parse(runNode(path.join(folder, "oneYear.js"), scenario)) as YearUse,
  );
  const of = (key: keyof YearUse): number => median(uses.map((use) => use[key]));
  return [
    {
      name: "year, time",
      value: of("seconds"),
      unit: "s",
      meaning: "CPU of a simulated year; asked: at most 8, aim 3",
    },
    { name: "year, memory", value: of("megabytes"), unit: "MB", meaning: "peak of that process; asked: below 300" },
  ];
}
