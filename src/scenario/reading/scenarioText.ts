// A scenario's text as a tree with the place of each value, including values of --set.
import { isMap, isScalar, isSeq, type Document, type Node, type Pair } from "yaml";
import type { Issue, Place } from "#foundation/issue.ts";
import type { Finding, Path } from "#scenario/values/finding.ts";
import type { Source } from "./source.ts";

interface Spot {
  readonly source: Source;
  readonly from: number;
  readonly to: number;
}

export class ScenarioText {
  readonly document: Document;
  readonly source: Source;
  /** Nodes that did not come from the file. */
  readonly #origins = new Map<unknown, Source>();
  /** What removed keys, by the mapping that had them. */
  readonly #removals = new Map<unknown, Map<string, Source>>();

  constructor(document: Document, source: Source) {
    this.document = document;
    this.source = source;
  }

  /** Plain values, as the glossary reads them. */
  content(): unknown {
    return this.document.toJS() as unknown;
  }

  /** Notes that a node was put in by another text. */
  credit(node: unknown, source: Source): void {
    this.#origins.set(node, source);
  }

  /** Notes that another text removed a key from a mapping. */
  creditRemoval(map: unknown, key: string, source: Source): void {
    this.#removals.set(map, (this.#removals.get(map) ?? new Map<string, Source>()).set(key, source));
  }

  toIssue({ path, at, place, value, severity, fate, ...fault }: Finding): Issue {
    const spot = this.#spot(path, at);
    const shown = value ?? (spot.exact ? spot.source.shown(spot.from, spot.to) : "");
    return {
      ...fault,
      severity: severity ?? "error",
      fate: fate ?? "file",
      place: place ?? this.#placeOf(spot),
      path: this.pathText(path),
      ...(shown === "" ? {} : { value: shown }),
    };
  }

  /** The path as --set takes it: a station by its name where it has one. */
  pathText(path: Path): string {
    return path
      .map((key, depth) => {
        if (typeof key === "string" && !/^\d+$/u.test(key)) return depth === 0 ? key : `.${key}`;
        const name = depth === 1 && path[0] === "stations" ? this.#stationName(Number(key)) : undefined;
        return name === undefined ? `[${key}]` : `.${name}`;
      })
      .join("");
  }

  /** What set this value: the file, or a --set. Undefined where nothing did. */
  originOf(path: Path): string | undefined {
    const spot = this.#spot(path);
    return spot.exact ? spot.source.file : undefined;
  }

  #stationName(index: number): string | undefined {
    const names = this.stationNames();
    const name = names[index];
    return name !== undefined && names.indexOf(name) === names.lastIndexOf(name) ? name : undefined;
  }

  /** Names of the listed stations in the text; undefined for those without one. */
  stationNames(): readonly (string | undefined)[] {
    const list = this.document.get("stations", true);
    if (!isSeq(list)) return [];
    return list.items.map((item) => {
      const name = isMap(item) ? item.get("name") : undefined;
      return typeof name === "string" ? name : undefined;
    });
  }

  #placeOf({ source, from }: Spot): Place {
    return source.placeOf(from);
  }

  /** The deepest part of the path that is there: its value, or its key where the value is empty or the rest is missing. */
  #spot(path: Path, at?: "key"): Spot & { readonly exact: boolean } {
    let node: unknown = this.document.contents;
    let source = this.source;
    let spot: Spot = { source, from: 0, to: 0 };
    for (const [depth, key] of path.entries()) {
      const pair = isMap(node) ? node.items.find((each) => keyText(each) === String(key)) : undefined;
      const child: unknown = pair === undefined ? (isSeq(node) ? node.items[Number(key)] : undefined) : pair.value;
      if (pair === undefined && child === undefined) {
        const remover = this.#removals.get(node)?.get(String(key));
        return remover === undefined ? { ...spot, exact: false } : { source: remover, from: 0, to: 0, exact: false };
      }
      source = this.#origins.get(pair?.key) ?? this.#origins.get(child) ?? source;
      const last = depth === path.length - 1;
      const keySpot = spotOf(pair?.key, source) ?? spot;
      const valueSource = this.#origins.get(child) ?? source;
      const whole = spotOf(child, valueSource);
      spot =
        last && at !== "key" && whole !== undefined && whole.to > whole.from
          ? whole
          : pair === undefined
            ? (whole ?? spot)
            : keySpot;
      [node, source] = [child, valueSource];
    }
    return { ...spot, exact: true };
  }
}

function spotOf(node: unknown, source: Source): Spot | undefined {
  const range = (node as Node | null | undefined)?.range;
  return range ? { source, from: range[0], to: range[1] } : undefined;
}

function keyText(pair: Pair): string {
  return isScalar(pair.key) ? String(pair.key.value) : "";
}
