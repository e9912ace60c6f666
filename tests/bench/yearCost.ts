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
  const plain = useOf(folder, scenario, rounds);
  const everything = useOf(folder, path.join(path.dirname(scenario), "everything.yaml"), rounds);
  const of = (key: keyof YearUse): number => median(plain.map((use) => use[key]));
  const withAll = (key: keyof YearUse): number => median(everything.map((use) => use[key]));
  return [
    {
      name: "year, time",
      value: of("seconds"),
      unit: "s",
      meaning: "CPU of a simulated year; asked: at most 8, aim 3",
    },
    { name: "year, memory", value: of("megabytes"), unit: "MB", meaning: "peak of that process; asked: below 300" },
    {
      name: "year with everything on, time",
      value: withAll("seconds"),
      unit: "s",
      meaning: "CPU of a year of shifts, stops, people, takeaway and judged parts; asked: at most 20, aim 10",
    },
    {
      name: "year with everything on, memory",
      value: withAll("megabytes"),
      unit: "MB",
      meaning: "peak of that process",
    },
  ];
}

function useOf(folder: string, scenario: string, rounds: number): readonly YearUse[] {
  return Array.from(
    { length: rounds },
    () => JSON.parse(runNode([path.join(folder, "oneYear.js"), scenario])) as YearUse,
  );
}
