// The program that fills and adds up quantile tables: WebAssembly made from `core/tables.ts`, one instance for all of them.
import { NODES } from "#core/border/numbers.ts";
import program from "#core/tables.wasm";
import normalScores from "./normalScores.f64";

/** What `core/tables.ts` offers. */
interface Filler {
  readonly memory: WebAssembly.Memory;
  toldAt(): number;
  tableAt(): number;
  scoresAt(): number;
  takeScores(): void;
  makeStraight(): void;
  makeTriangle(mode: number): void;
  makeCurve(): void;
  sumOfInverses(first: number, last: number, location: number, scale: number, least: number): number;
}

/** A rate of location + scale × what a table says, but never below `least`. */
interface TabledRate {
  readonly table: Float64Array;
  readonly location: number;
  readonly scale: number;
  readonly least: number;
}

/** Each table is one of its own: body, lower tail and upper tail. */
export interface Tables {
  normal(): Float64Array;
  straight(): Float64Array;
  triangle(mode: number): Float64Array;
  /** Through the points of `curvePoints`. */
  curve(points: Float64Array): Float64Array;
  /** Sum of the means of 1 / rate in each cell from one node to another, within the body or a tail. */
  sumOfInverses(rate: TabledRate, first: number, last: number): number;
}

let opened: Tables | undefined;

export function tables(): Tables {
  return (opened ??= openTables());
}

function openTables(): Tables {
  const module = new WebAssembly.Module(program);
  const filler = new WebAssembly.Instance(module, {}).exports as unknown as Filler;
  const { buffer } = filler.memory;
  new Uint8Array(buffer, filler.toldAt(), normalScores.length).set(normalScores);
  filler.takeScores();
  const tableAt = (place: number): Float64Array => new Float64Array(buffer, place, 3 * NODES).slice();
  return {
    normal: () => tableAt(filler.scoresAt()),
    straight() {
      filler.makeStraight();
      return tableAt(filler.tableAt());
    },
    triangle(mode) {
      filler.makeTriangle(mode);
      return tableAt(filler.tableAt());
    },
    curve(points) {
      new Float64Array(buffer, filler.toldAt(), points.length).set(points);
      filler.makeCurve();
      return tableAt(filler.tableAt());
    },
    sumOfInverses({ table, location, scale, least }, first, last) {
      new Float64Array(buffer, filler.tableAt(), table.length).set(table);
      return filler.sumOfInverses(first, last, location, scale, least);
    },
  };
}
