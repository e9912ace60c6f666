// The code of the steps, one flat list of whole numbers: an operation, and after it what the operation needs to know.
import * as core from "#core/border/numbers.ts";
import { isPlainShow, type Give, type Row } from "./row.ts";

/** How the time of a step passes, beside what its row says. */
export interface StepTime {
  /** Number of its first distribution. */
  readonly firstDistribution: number;
  /** Number of the draws that are made ahead, -1 where the step draws when it starts. */
  readonly kind: number;
  /** The next step may be done ahead of the clock. */
  readonly leadsOn: boolean;
}

export class StepCode {
  /** Where a process rests its code is at REST, and at GIVE_UP where its patience ends. */
  readonly numbers: number[] = [core.REST, core.GIVE_UP];
  /** By number: how much a counter rises. */
  readonly amounts: number[] = [];
  /** Of each row: where the process reaches it. */
  readonly #reachedAt: number[] = [];
  /** Places in the code that name a row so far, since a step may lead to one further down. */
  readonly #jumps: number[] = [];

  /** Adds the code of the next row; returns where it begins and where it goes on when all that the step needs is there. */
  add(row: Row, time: StepTime): readonly [reachedAt: number, startsAt: number] {
    const code = this.numbers;
    const number = this.#reachedAt.push(code.length) - 1;
    code.push(core.STEP, number);
    if (row.needs.length > 0 || row.gates.length > 0) code.push(core.NEED);
    const startsAt = code.length;
    addTakes(code, row);
    addStart(code, row, time);
    this.#addEnd(row);
    if (row.turns) code.push(core.TURN);
    else if (row.next !== number + 1) {
      this.#jumps.push(code.length + 1);
      code.push(core.NEXT, row.next, row.next <= number ? 1 : 0);
    }
    return [this.#reachedAt[number]!, startsAt];
  }

  /** To be called when all rows have been added. */
  close(): void {
    for (const place of this.#jumps) this.numbers[place] = this.#reachedAt[this.numbers[place]!]!;
  }

  #addEnd({ gives, counts, releases, scale, chance }: Row): void {
    const code = this.numbers;
    for (const give of gives) {
      if (isPlainGive(give)) code.push(core.GIVE, give.place);
      else code.push(core.GIVE_CHOSEN, give.place, give.by, give.count, give.carries);
    }
    for (const { counter, amount } of counts) code.push(core.COUNT, counter, this.amounts.push(amount) - 1);
    if (releases !== -1) code.push(core.RELEASE, releases);
    if (scale) code.push(core.WEIGH);
    if (chance > 0) code.push(core.CHANCE);
  }
}

function addTakes(code: number[], { needs }: Row): void {
  if (!needs.every(({ by, count }) => by === core.NO_REGISTER && count === 1)) code.push(core.TAKE_ALL);
  else {
    needs.forEach(({ place, takes }, i) => {
      code.push(core.TAKE, place, takes, i === 0 ? 1 : 0, i === needs.length - 1 ? 1 : 0);
    });
  }
}

function addStart(code: number[], row: Row, { firstDistribution, kind, leadsOn }: StepTime): void {
  if (row.stops !== -1) code.push(core.STOP);
  const { draw, shows, activity, isClock } = row;
  const plain = shows.filter(isPlainShow);
  if (plain.length > 0) code.push(core.SHOW, plain.length);
  for (const { resource, states } of plain) code.push(resource, states[0]!);
  for (const show of shows) {
    if (!isPlainShow(show)) code.push(core.SHOW_CHOSEN, show.resource, show.by, show.states.length, ...show.states);
  }
  if (draw) {
    const chooses = draw.samplers.length > 1 ? 1 : 0;
    code.push(core.TIME, firstDistribution, chooses, kind, isClock ? -1 : activity, draw.clock, leadsOn ? 1 : 0);
    if (isClock) code.push(core.UNBIND);
  } else if (row.needs.length > 0) code.push(core.PASS);
}

function isPlainGive({ by, count, carries }: Give): boolean {
  return by === core.NO_REGISTER && count === 1 && carries === core.CARGO;
}
