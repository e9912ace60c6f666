// Reads a run on a calendar at every quarter of an hour of its local days: what its stations did and how many good parts came.
import type { WallClock } from "#engine/calendar.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { Simulation } from "#engine/run/simulation.ts";
import { wallAt, wallClockOf } from "#scenario/resolving/wallTime.ts";
import { goodCounter, partsOf, rejectsOf } from "#cell/words/cycleNames.ts";
import { elementOf } from "#cell/words/elementWords.ts";
import { stateNames, type StateKind } from "#cell/words/stateNames.ts";
import type { CellPlan } from "#cell/layers/planCell.ts";
import { dayUses, type DayRecord, type DayUse, type QuarterRecord } from "#cell/records/quarterRecord.ts";
import { rejectReasons } from "#cell/layers/withQuality.ts";

const SECONDS_OF_DAY = 86_400;
const QUARTER = 900;
/** A picture shows 53 weeks, of which the first may lack days; no more quarters are kept. */
const mostDays = 54 * 7;

/** What is read at a border; all of it grows while the run goes on. */
interface Reading {
  readonly tick: number;
  /** By use, all stations together. */
  readonly uses: readonly number[];
  readonly good: number;
}

export class QuarterHours {
  readonly #plan: CellPlan;
  readonly #clock: WallClock;
  /** States of stations, with the place of their use. */
  readonly #ofStations: readonly { readonly state: number; readonly use: number }[];
  /** Counters of good parts, and of rejects to be taken from them. */
  readonly #good: readonly number[];
  readonly #refused: readonly number[];
  readonly #keepsQuarters: boolean;
  readonly #records: QuarterRecord[] = [];
  readonly #days: DayRecord[] = [];
  #last: Reading | undefined;

  /** Undefined where the cell knows no calendar. */
  static of(plan: CellPlan, keepsQuarters: boolean): QuarterHours | undefined {
    const { calendar } = plan.scenario;
    return calendar ? new QuarterHours(plan, wallClockOf(calendar), keepsQuarters) : undefined;
  }

  private constructor(plan: CellPlan, clock: WallClock, keepsQuarters: boolean) {
    this.#plan = plan;
    this.#keepsQuarters = keepsQuarters;
    this.#clock = clock;
    const { program, scenario } = plan;
    const names = scenario.stations.map(({ name }) => name);
    const states = program.states.map(({ name, kind, resource }, state) => {
      return { name, kind, state, owner: plan.resources[resource]!.kind };
    });
    const own = states.filter(({ owner }) => owner === "station");
    this.#ofStations = own.map(({ name, kind, state }) => ({ state, use: dayUses.indexOf(useOf(name, kind)) }));
    const counters = (wanted: readonly string[]): readonly number[] =>
      wanted.map((name) => program.counters.indexOf(name)).filter((counter) => counter !== -1);
    this.#good = counters(scenario.takeaway ? [goodCounter] : names.map(partsOf));
    this.#refused = scenario.takeaway
      ? []
      : counters(names.flatMap((name) => rejectReasons.map((reason) => rejectsOf(name, reason))));
  }

  /** Of the first days; none where they are not kept. */
  get records(): readonly QuarterRecord[] {
    return this.#records;
  }

  /** In chronological order. */
  get days(): readonly DayRecord[] {
    return this.#days;
  }

  /** Ticks of all borders within the stretch, its end included. Clocks change by whole hours, so that quarters stay quarters. */
  borders(from: number, until: number): readonly number[] {
    const second = QUARTER * TICKS_PER_SECOND;
    const offset = (this.#clock.begins % QUARTER) * TICKS_PER_SECOND;
    const first = (Math.floor((from + offset) / second) + 1) * second - offset;
    const count = Math.max(0, Math.ceil((until - first) / second));
    return [...Array.from({ length: count }, (_, i) => first + i * second), until];
  }

  /** What runs the simulation on to a tick, as `runOn` does, and reads at every border on the way. */
  readingOn(
    simulation: Simulation,
    { from, until, runOn }: { readonly from: number; readonly until: number; readonly runOn: (tick: number) => void },
  ): (tick: number) => void {
    const borders = this.borders(from, until);
    let passed = 0;
    this.read(simulation);
    return (tick) => {
      for (; passed < borders.length && borders[passed]! <= tick; passed++) {
        runOn(borders[passed]!);
        this.read(simulation);
      }
      runOn(tick);
    };
  }

  /** Books what was done since the last reading. */
  read(simulation: Simulation): void {
    simulation.settle();
    const now = this.#readingOf(simulation);
    if (this.#last) this.#add(this.#recordOf(this.#last, now));
    this.#last = now;
  }

  #add(quarter: QuarterRecord): void {
    const { day, from, until, seconds, good } = quarter;
    const last = this.#days.at(-1);
    if (last?.day !== day) this.#days.push({ day, from, until, seconds, good });
    else {
      const sums = dayUses.map((_, i) => last.seconds[i]! + seconds[i]!);
      this.#days[this.#days.length - 1] = { ...last, until, seconds: sums, good: last.good + good };
    }
    if (this.#keepsQuarters && this.#days.length <= mostDays) this.#records.push(quarter);
  }

  #readingOf({ stateTicks, counts, now }: Simulation): Reading {
    const uses = dayUses.map(() => 0);
    for (const { state, use } of this.#ofStations) uses[use]! += stateTicks[state]!;
    return {
      tick: now,
      uses,
      good: sumAt(counts, this.#good) - sumAt(counts, this.#refused),
    };
  }

  #recordOf(before: Reading, after: Reading): QuarterRecord {
    const stations = this.#plan.scenario.stations.length;
    const grown = dayUses.map((_, use) => (after.uses[use]! - before.uses[use]!) / stations);
    const wall = wallAt(before.tick / TICKS_PER_SECOND, this.#clock);
    const day = Math.floor(wall / SECONDS_OF_DAY);
    return {
      day,
      second: wall - day * SECONDS_OF_DAY,
      from: before.tick / TICKS_PER_SECOND,
      until: after.tick / TICKS_PER_SECOND,
      seconds: grown.map((ticks) => ticks / TICKS_PER_SECOND),
      good: after.good - before.good,
    };
  }
}

function sumAt(values: Float64Array, places: readonly number[]): number {
  return places.reduce((sum, place) => sum + values[place]!, 0);
}

/** A mold that is being cleared stands still as well. The purge of a change counts as the change, since the stations show that. */
function useOf(state: string, kind: StateKind): DayUse {
  if (kind === "set-up") return state === stateNames.changeover ? "changeover" : "start-up";
  if (kind === "off") return "off";
  if (kind === "stopped" || elementOf(state, kind) === "ADET") return "stopped";
  return kind === "waiting" ? "waiting" : "working";
}
