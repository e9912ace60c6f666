// Collects the records of a log and fits each step, repair and time between stops.
import type { LogSummary } from "#analysis/log/logReader.ts";
import { mostGroups, type StepRecord } from "#analysis/log/logRecord.ts";
import { codePointOrder } from "#foundation/codePointOrder.ts";
import { fitStep, type Candidate, type Suggestion } from "./candidates.ts";
import { Series, type SeriesSummary } from "./series.ts";
import { Runs, Stops, fitTimes, timesFamilies } from "./stops.ts";
import type { CensoredTimes } from "./censored.ts";

type FitKind = "step" | "repair" | "between";

export interface Fit {
  readonly station: string;
  readonly step: string;
  readonly kind: FitKind;
  readonly summary: SeriesSummary;
  readonly candidates: readonly Candidate[];
  /** Absent where too few times are known. */
  readonly suggestion?: Suggestion;
  /** Times between stops that the log's end cut off. */
  readonly censored: number;
}

export interface LogFit extends LogSummary {
  readonly name: string;
  /** How many there are of each wait, by its name. */
  readonly waits: ReadonlyMap<string, number>;
  readonly fits: readonly Fit[];
}

interface Group<Content> {
  readonly station: string;
  readonly step: string;
  readonly content: Content;
}

export class LogCollector {
  readonly #steps = new Map<string, Group<Series>>();
  readonly #stops = new Map<string, Group<Stops>>();
  readonly #runs = new Runs();
  readonly #waits = new Map<string, number>();
  /** A log with more groups than are collected cannot be fitted. */
  isTooWide = false;

  take(record: StepRecord): void {
    this.#runs.add(record);
    if (record.kind === "wait") this.#addWait(record.step);
    else if (record.kind === "stop") this.#groupOf(this.#stops, record, (seed) => new Stops(seed))?.add(record);
    else this.#groupOf(this.#steps, record, (seed) => new Series(seed))?.add(record.seconds, record.start, record.hour);
  }

  #addWait(name: string): void {
    this.isTooWide ||= this.#waits.size > mostGroups;
    if (!this.isTooWide) this.#waits.set(name, (this.#waits.get(name) ?? 0) + 1);
  }

  #groupOf<Content>(
    groups: Map<string, Group<Content>>,
    { station, step }: StepRecord,
    open: (seed: string) => Content,
  ): Content | undefined {
    const key = `${station}\u001F${step}`;
    const known = groups.get(key);
    if (known) return known.content;
    this.isTooWide ||= groups.size >= mostGroups;
    if (this.isTooWide) return undefined;
    const content = open(key);
    groups.set(key, { station, step, content });
    return content;
  }

  /** One fit after the other, since each may take a second. */
  *fits(): Generator<Fit> {
    for (const { station, step, content } of inOrder(this.#steps)) {
      const summary = content.summary();
      yield { station, step, kind: "step", summary, censored: 0, ...fitStep(summary, `${station}/${step}`) };
    }
    for (const { station, step, content } of inOrder(this.#stops)) {
      const [repairs, between] = [content.repairs(), content.between(this.#runs)];
      const seed = `${station}/${step}`;
      yield { station, step, kind: "repair", summary: repairs, censored: 0, ...fitRepairs(repairs, seed) };
      if (between.complete.length === 0) continue;
      const { censored } = between;
      yield {
        station,
        step,
        kind: "between",
        summary: summaryOf(between),
        censored: censored.length,
        ...fitTimes(between, seed),
      };
    }
  }

  get count(): number {
    return this.#steps.size + this.#stops.size;
  }

  get waits(): ReadonlyMap<string, number> {
    return this.#waits;
  }
}

/** Fewer repairs than a test needs are compared by their likelihood alone. */
function fitRepairs(repairs: SeriesSummary, seed: string): Pick<Fit, "candidates" | "suggestion"> {
  const isFew = repairs.count >= 2 && repairs.count < 20;
  if (!isFew) return fitStep(repairs, `${seed}/repair`, timesFamilies);
  return fitTimes({ complete: repairs.sorted, censored: new Float64Array(0) }, `${seed}/repair`);
}

function summaryOf({ complete }: CensoredTimes): SeriesSummary {
  const series = new Series("between");
  for (const value of complete) series.add(value, undefined, undefined);
  return series.summary();
}

function inOrder<Content>(groups: ReadonlyMap<string, Group<Content>>): readonly Group<Content>[] {
  return [...groups].toSorted(([one], [other]) => codePointOrder(one, other)).map(([, group]) => group);
}
