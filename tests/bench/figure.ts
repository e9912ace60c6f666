// A figure of the benchmark: name, value, unit and meaning.
import { medianRatio } from "./median.ts";

export interface Figure {
  readonly name: string;
  readonly value: number;
  readonly unit: "ratio" | "ns" | "ms" | "s" | "MB" | "points/s";
  readonly meaning: string;
}

export function ratioOf(name: string, above: readonly number[], below: readonly number[], meaning: string): Figure {
  return { name, value: medianRatio(above, below), unit: "ratio", meaning };
}
