// The sections of the core that hold what steps do: their code, and the records that the code and stops refer to.
import * as core from "#core/border/numbers.ts";
import {
  distributionTable,
  type DistributionTable,
  type StepDistributions,
} from "#engine/distributions/distributionTable.ts";
import { drawnAhead } from "./drawnAhead.ts";
import type { Draw, Need, Row, Scale } from "./row.ts";
import { secludedPassages } from "./seclusion.ts";
import { StepCode } from "./stepCode.ts";
import type { StepTable } from "./stepTable.ts";

/** A section and its numbers. */
export type Section = readonly [section: number, numbers: ArrayLike<number>];

export class StepSections {
  readonly #code = new StepCode();
  readonly #steps: number[] = [];
  readonly #stepReals: number[] = [];
  readonly #needs: number[] = [];
  readonly #lists: number[] = [];
  readonly #draws: number[] = [];
  readonly #until: number[] = [];
  readonly #scales: number[] = [];
  readonly #limits: number[] = [];
  readonly #distributions: StepDistributions[] = [];
  #distributionCount = 0;
  /** Streams drawn ahead, and the distribution that each serves. */
  readonly #ahead: readonly number[];
  readonly #distributionsAhead: number[] = [];

  /** By place: processes that take from it. */
  constructor(table: StepTable, rows: readonly Row[], takers: readonly (readonly number[])[]) {
    this.#ahead = drawnAhead(rows);
    const leadsOn = secludedPassages(rows, table);
    const isWantedByOne = ({ place, by }: Need): boolean => by === core.NO_REGISTER && takers[place]!.length === 1;
    rows.forEach((row, number) => {
      const takesAlone = !row.standsInLine && row.needs.every(isWantedByOne);
      this.#add(row, number, leadsOn[number]!, takesAlone);
    });
    this.#code.close();
  }

  get wholes(): readonly Section[] {
    return [
      [core.CODE, this.#code.numbers],
      [core.STEPS, this.#steps],
      [core.NEEDS, this.#needs],
      [core.LISTS, this.#lists],
      [core.DRAWS, this.#draws],
      [core.SCALES, this.#scales],
      [core.AHEAD, this.#ahead.flatMap((stream, kind) => [this.#distributionsAhead[kind]!, stream])],
    ];
  }

  get reals(): readonly Section[] {
    return [
      [core.AMOUNTS, this.#code.amounts],
      [core.STEP_REALS, this.#stepReals],
      [core.UNTIL, this.#until],
      [core.LIMITS, this.#limits],
    ];
  }

  get distributions(): DistributionTable {
    return distributionTable(this.#distributions);
  }

  /** In the order of `Step` in `core/state/steps.ts`. */
  #add(row: Row, number: number, leadsOn: boolean, takesAlone: boolean): void {
    const patience = this.#addDraw(row.patience);
    const draw = this.#addDraw(row.draw);
    const firstDistribution = draw === -1 ? -1 : this.#draws[draw * core.DRAW_SIZE]!;
    const kind = row.draw ? this.#ahead.indexOf(row.draw.stream) : -1;
    if (kind !== -1) this.#distributionsAhead[kind] ??= firstDistribution;
    const [reachedAt, startsAt] = this.#code.add(row, { firstDistribution, kind, leadsOn });
    const waitsUnseen =
      takesAlone && row.needs.every(({ meanwhile, othersTurn }) => meanwhile === -1 && othersTurn === -1);
    this.#stepReals.push(row.priority, row.chance);
    this.#steps.push(
      number,
      (takesAlone ? core.TAKES_ALONE : 0) |
        (waitsUnseen ? core.WAITS_UNSEEN : 0) |
        (row.isPhysics ? core.IS_PHYSICS : 0),
      reachedAt,
      startsAt,
      this.#addNeeds(row.needs),
      row.needs.length,
      this.#addList(row.gates),
      row.gates.length,
      this.#addList(row.occupies),
      row.occupies.length,
      ...row.stopEffect,
      row.stops,
      row.stopsRule,
      patience,
      row.patienceActivity,
      row.patienceNext,
      draw,
      row.activity,
      row.draw ? row.draw.clock : -1,
      this.#addScale(row.scale),
      row.chanceStream,
      row.chanceNext,
    );
  }

  /** Returns where they begin. */
  #addList(numbers: readonly number[]): number {
    return this.#lists.push(...numbers) - numbers.length;
  }

  #addNeeds(needs: readonly Need[]): number {
    const first = this.#needs.length / core.NEED_SIZE;
    for (const { place, by, count, meanwhile, othersTurn, quiet, takes, causes } of needs) {
      const causesAt = this.#addList(causes.flatMap(({ resource, state, shows }) => [resource, state, shows]));
      this.#needs.push(place, by, count, meanwhile, othersTurn, quiet ? 1 : 0, takes, causesAt, causes.length, 0);
    }
    return first;
  }

  /** Returns its number, -1 where there is none. */
  #addDraw(draw: Draw | null): number {
    if (!draw) return -1;
    const { samplers, stream, again, until } = draw;
    this.#draws.push(
      this.#addDistributions({ samplers, isUntil: until !== core.BY_DISTRIBUTION }),
      samplers.length,
      stream,
      again ? 1 : 0,
    );
    return this.#until.push(until) - 1;
  }

  #addScale(scale: Scale | null): number {
    if (!scale) return -1;
    const { sampler, stream, keeps, alone, low, high, belowNext, aboveNext } = scale;
    const distribution = this.#addDistributions({ samplers: [sampler], isUntil: false });
    this.#scales.push(distribution, stream, keeps ? 1 : 0, alone ? 1 : 0, belowNext, aboveNext);
    return this.#limits.push(low, high) / 2 - 1;
  }

  /** Returns the number of the first. */
  #addDistributions(distributions: StepDistributions): number {
    this.#distributions.push(distributions);
    this.#distributionCount += distributions.samplers.length;
    return this.#distributionCount - distributions.samplers.length;
  }
}
