// A compiled step table as the core takes it in: one section of numbers after the other.
import * as core from "./core/numbers.ts";
import type { Program } from "./program.ts";
import type { Draw, Row, Scale } from "./row.ts";

/** By section; those that belong to one run only are absent. */
export interface CoreImage {
  readonly wholes: ReadonlyMap<number, ArrayLike<number>>;
  readonly reals: ReadonlyMap<number, ArrayLike<number>>;
}

/** What draws and scales of all rows become, as the rows are told one after the other. */
interface Gathered {
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
  const { table, rows, steps, laws } = program;
  const gathered: Gathered = { lists: [], draws: [], until: [], scales: [], limits: [] };
  const facts = rows.flatMap((row) => factsOf(row, gathered));
  const wholes: readonly (readonly [number, ArrayLike<number>])[] = [
    [core.CODE, steps.code],
    [core.REACHED_AT, steps.reachedAt],
    [core.STARTS_AT, steps.startsAt],
    [core.ROWS, facts],
    [core.LISTS, gathered.lists],
    [core.DRAWS, gathered.draws],
    [core.SCALES, gathered.scales],
    [core.CARGO_AT_FIRST, table.processes.map(({ cargo }) => cargo ?? 0)],
    [core.OWN_RESOURCE, program.ownResource],
    [core.FIRST_STATE, program.firstState],
    [core.STOPPED_STATE, program.stoppedState],
    [core.STOPPED_ACTIVITY, program.stoppedActivity],
    ...lists(core.TAKERS_AT, core.TAKERS, program.takers),
    ...lists(core.LINES_AT, core.LINES, program.lines),
    [core.RULE, program.servingRule],
    [core.RANK, program.rank],
    ...lists(core.CLOCKED_AT, core.CLOCKED, program.clocked),
  ];
  const reals: readonly (readonly [number, ArrayLike<number>])[] = [
    [core.QUANTILES, laws.quantiles],
    [core.AMOUNTS, steps.amounts],
    [core.ROW_REALS, rows.flatMap(({ priority, chance }) => [priority, chance])],
    [core.UNTIL, gathered.until],
    [core.LIMITS, gathered.limits],
    [core.PRIORITY_AT_FIRST, table.processes.map(({ priority }) => priority ?? 0)],
  ];
  return { wholes: new Map(wholes), reals: new Map(reals) };
}

/** Lists side by side: where each begins and one more, and what they hold. */
function lists(
  placesSection: number,
  section: number,
  all: readonly ArrayLike<number>[],
): readonly (readonly [number, ArrayLike<number>])[] {
  const places = [0];
  for (const list of all) places.push(places.at(-1)! + list.length);
  return [
    [placesSection, places],
    [section, all.flatMap((list) => Array.from(list))],
  ];
}

/** In the order of the numbers that `core/numbers.ts` gives to the facts of a row. */
function factsOf(row: Row, gathered: Gathered): readonly number[] {
  const { lists: listed } = gathered;
  const needs = listed.length;
  for (const need of row.needs) {
    const { place, by, count, meanwhile, othersTurn, quiet, takes } = need;
    listed.push(place, by, count, meanwhile, othersTurn, quiet ? 1 : 0, takes);
  }
  const gates = listed.push(...row.gates) - row.gates.length;
  const occupies = listed.push(...row.occupies) - row.occupies.length;
  const flags =
    (row.takesAlone ? core.TAKES_ALONE : 0) |
    (row.waitsUnseen ? core.WAITS_UNSEEN : 0) |
    (row.isPhysics ? core.IS_PHYSICS : 0);
  return [
    flags,
    ...[needs, row.needs.length, gates, row.gates.length, occupies, row.occupies.length],
    ...row.stopEffect,
    ...[row.stops, row.stopsRule],
    ...[addDraw(row.patience, gathered), row.patienceActivity, row.patienceNext],
    ...[addDraw(row.draw, gathered), row.activity, row.draw ? row.draw.clock : -1],
    addScale(row.scale, gathered),
    ...[row.chanceStream, row.chanceNext],
  ];
}

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
