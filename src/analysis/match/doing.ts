// All that a resource did under one name, in bounded room: each time by itself, or sums of so many where there are too many.
import type { StepRecord } from "#analysis/log/logRecord.ts";

/** The sum of so many values that follow one another. */
export interface Cell {
  readonly sum: number;
  readonly count: number;
}

/** A time after so many starts more. */
export interface Mark {
  readonly time: number;
  readonly count: number;
}

/** Seconds that lie between two instants. */
export interface Span {
  readonly from: number;
  readonly until: number;
  readonly seconds: number;
}

export class Doing {
  readonly station: string;
  readonly name: string;
  readonly kind: StepRecord["kind"];
  /** A cell holds so many times. */
  each = 1;
  count = 0;
  #starts: number[] = [];
  #seconds: number[] = [];
  /** Of each cell one at random; NaN before the first start. */
  #gaps: number[] = [];
  #last = NaN;
  #end = -Infinity;
  readonly #draw: () => number;

  constructor({ station, step, kind }: StepRecord, draw: () => number) {
    this.station = station;
    this.name = step;
    this.kind = kind;
    this.#draw = draw;
  }

  add(start: number, seconds: number): void {
    const held = this.count % this.each;
    const gap = start - this.#last;
    const place = this.#starts.length - 1;
    if (held === 0) {
      this.#starts.push(start);
      this.#seconds.push(seconds);
      this.#gaps.push(gap);
    } else {
      this.#seconds[place]! += seconds;
      if (this.#draw() * (held + 1) < 1) this.#gaps[place] = gap;
    }
    this.count += 1;
    this.#last = start;
    this.#end = Math.max(this.#end, start + seconds);
  }

  /** The last time goes on. */
  extend(seconds: number): void {
    this.#seconds[this.#seconds.length - 1]! += seconds;
  }

  get cells(): number {
    return this.#starts.length;
  }

  /** Makes one cell of two. */
  halve(): void {
    const isFirst = (_: number, i: number): boolean => i % 2 === 0;
    const gaps = this.#gaps;
    this.each *= 2;
    this.#starts = this.#starts.filter(isFirst);
    this.#seconds = this.#seconds.filter(isFirst).map((sum, i) => sum + (this.#seconds[2 * i + 1] ?? 0));
    this.#gaps = gaps.filter(isFirst).map((gap, i) => (this.#draw() < 0.5 ? (gaps[2 * i + 1] ?? gap) : gap));
  }

  get first(): number {
    return this.#starts[0]!;
  }

  get last(): number {
    return this.#last;
  }

  /** Each by itself only where `each` is 1. */
  get times(): readonly number[] {
    return this.#seconds;
  }

  durations(): readonly Cell[] {
    return this.#seconds.map((sum, i) => ({ sum, count: Math.min(this.each, this.count - i * this.each) }));
  }

  /** A sample of the times from one start to the next; all of them where `each` is 1. */
  gaps(): readonly number[] {
    return this.#gaps.filter((gap) => !Number.isNaN(gap));
  }

  /** All starts, as far as they are known: the first, each first one of a cell, the last. */
  marks(): readonly Mark[] {
    const marks = this.#starts.map((time, i) => ({ time, count: i === 0 ? 1 : this.each }));
    const rest = this.count - 1 - (this.#starts.length - 1) * this.each;
    return rest > 0 ? [...marks, { time: this.#last, count: rest }] : marks;
  }

  /** The seconds of a cell are taken to lie evenly until the next. */
  spans(): readonly Span[] {
    return this.#starts.map((from, i) => {
      const seconds = this.#seconds[i]!;
      const next = this.#starts[i + 1] ?? this.#end;
      return { from, until: this.each === 1 || next <= from ? from + seconds : next, seconds };
    });
  }
}
