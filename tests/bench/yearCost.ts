// The CPU time and memory of a simulated year, from the start of the process to its record.
import path from "node:path";
import type { Figure } from "./figure.ts";
import { median } from "./median.ts";
import { runNode, type Places } from "./places.ts";

interface YearUse {
  readonly seconds: number;
  readonly megabytes: number;
}

export function yearCost({ folder, scenario }: Places, rounds: number): readonly Figure[] {
  const plain = useOf(folder, scenario, rounds);
  const everything = useOf(folder, path.join(path.dirname(scenario), "everything.yaml"), rounds);
  const of = (key: keyof YearUse): number => median(plain.map((use) => use[key]));
  const withAll = (key: keyof YearUse): number => median(everything.map((use) => use[key]));
  return [
    {
      name: "year, time",
      value: of("seconds"),
      unit: "s",
      meaning: "CPU time of a simulated year; limit 8, target 3",
    },
    { name: "year, memory", value: of("megabytes"), unit: "MB", meaning: "peak memory of that process; limit 300" },
    {
      name: "year with everything on, time",
      value: withAll("seconds"),
      unit: "s",
      meaning: "CPU time of a year with shifts, stops, operators, takeaway and quality checks; limit 20, target 10",
    },
    {
      name: "year with everything on, memory",
      value: withAll("megabytes"),
      unit: "MB",
      meaning: "peak memory of that process",
    },
  ];
}

function useOf(folder: string, scenario: string, rounds: number): readonly YearUse[] {
  return Array.from(
    { length: rounds },
    () => JSON.parse(runNode([path.join(folder, "oneYear.js"), scenario])) as YearUse,
  );
}
