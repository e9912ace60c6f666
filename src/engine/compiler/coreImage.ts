// A compiled step table as the core takes it in: one section of numbers after the other.
import * as core from "#core/border/numbers.ts";
import type { Program } from "./program.ts";
import type { Draw, Row, Scale } from "./row.ts";

/** By section; those that belong to one run only are absent. */
export interface CoreImage {
  readonly wholes: ReadonlyMap<number, ArrayLike<number>>;
  readonly reals: ReadonlyMap<number, ArrayLike<number>>;
}

/** What rows have several of, gathered while the rows are told one after the other. */
interface Gathered {
  readonly needs: number[];
  readonly lists: number[];
  readonly draws: number[];
  readonly until: number[];
  readonly scales: number[];
  readonly limits: number[];
}

const images = new WeakMap<Program, CoreImage>();

/** The same for every run of the program. */
export function coreImage(program: Program): CoreImage {
  const known = images.get(program);
  if (known) return known;
  const image = makeImage(program);
  images.set(program, image);
  return image;
}

function makeImage(program: Program): CoreImage {
  const { table, rows, steps, laws, takers, lines, clocked } = program;
  const gathered: Gathered = { needs: [], lists: [], draws: [], until: [], scales: [], limits: [] };
  const told = rows.flatMap((row, number) => [number, ...stepNumbers(row, number, program, gathered)]);
  const resources = Array.from(program.firstState, (state, i) => [
    state,
    program.stoppedState[i]!,
    program.stoppedActivity[i]!,
    clocked[i]!.length,
    program.worker[i]!,
  ]);
  const places = Array.from(program.servingRule, (rule, i) => [
    rule,
    program.rank[i]!,
    takers[i]!.length,
    lines[i]!.length,
  ]);
  const wholes: readonly (readonly [number, ArrayLike<number>])[] = [
    [core.CODE, steps.code],
    [core.STEPS, told],
    [core.NEEDS, gathered.needs],
    [core.LISTS, gathered.lists],
    [core.DRAWS, gathered.draws],
    [core.SCALES, gathered.scales],
    [core.PROCESSES, table.processes.flatMap(({ cargo }, i) => [program.ownResource[i]!, cargo ?? 0])],
    [core.RESOURCES, resources.flat()],
    [core.CLOCKED, sideBySide(clocked)],
    [core.PLACES, places.flat()],
    [core.TAKERS, sideBySide(takers)],
    [core.LINES, sideBySide(lines)],
    [core.AHEAD, program.drawnAhead.flatMap(({ law, stream }) => [law, stream])],
  ];
  const reals: readonly (readonly [number, ArrayLike<number>])[] = [
    [core.QUANTILES, laws.quantiles],
    [core.AMOUNTS, steps.amounts],
    [core.STEP_REALS, rows.flatMap(({ priority, chance }) => [priority, chance])],
    [core.UNTIL, gathered.until],
    [core.LIMITS, gathered.limits],
    [core.PRIORITIES, table.processes.map(({ priority }) => priority ?? 0)],
  ];
  return { wholes: new Map(wholes), reals: new Map(reals) };
}

function sideBySide(lists: readonly Int32Array[]): readonly number[] {
  return lists.flatMap((list) => Array.from(list));
}

/** In the order of `Step` in `core/steps.ts`, after its number. */
function stepNumbers(row: Row, number: number, { steps }: Program, gathered: Gathered): readonly number[] {
  const { needs, lists } = gathered;
  const needsAt = needs.length / NEED_SIZE;
  for (const { place, by, count, meanwhile, othersTurn, quiet, takes } of row.needs)
    needs.push(place, by, count, meanwhile, othersTurn, quiet ? 1 : 0, takes, 0);
  const gatesAt = lists.push(...row.gates) - row.gates.length;
  const occupiesAt = lists.push(...row.occupies) - row.occupies.length;
  const flags =
    (row.takesAlone ? core.TAKES_ALONE : 0) |
    (row.waitsUnseen ? core.WAITS_UNSEEN : 0) |
    (row.isPhysics ? core.IS_PHYSICS : 0);
  return [
    flags,
    steps.reachedAt[number]!,
    steps.startsAt[number]!,
    needsAt,
    row.needs.length,
    gatesAt,
    row.gates.length,
    occupiesAt,
    row.occupies.length,
    ...row.stopEffect,
    row.stops,
    row.stopsRule,
    addDraw(row.patience, gathered),
    row.patienceActivity,
    row.patienceNext,
    addDraw(row.draw, gathered),
    row.activity,
    row.draw ? row.draw.clock : -1,
    addScale(row.scale, gathered),
    row.chanceStream,
    row.chanceNext,
  ];
}

/** Numbers of a `Need` in `core/steps.ts`. */
const NEED_SIZE = 8;

/** Returns its number, -1 where there is none. */
function addDraw(draw: Draw | null, { draws, until }: Gathered): number {
  if (!draw) return -1;
  draws.push(draw.firstLaw, draw.samplers.length, draw.stream, draw.again ? 1 : 0);
  return until.push(draw.until) - 1;
}

function addScale(scale: Scale | null, { scales, limits }: Gathered): number {
  if (!scale) return -1;
  const { law, stream, keeps, alone, belowNext, aboveNext } = scale;
  scales.push(law, stream, keeps ? 1 : 0, alone ? 1 : 0, belowNext, aboveNext);
  return limits.push(scale.low, scale.high) / 2 - 1;
}
