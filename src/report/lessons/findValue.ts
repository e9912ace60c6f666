// Finds a value of a lesson in the records of its cells.
import type { CircuitOwner } from "#analysis/ideal/idealCircuit.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { shotRecords } from "#cell/records/shotRecord.ts";
import { PLASTICATOR } from "#cell/words/cycleNames.ts";
import { shotRoles } from "#cell/words/cellTable.ts";
import type { CellMeasure, MomentMeasure, PairMeasure, PatternMeasure, SpellPattern, ValueSpec } from "./lesson.ts";
import { findSpells } from "./findSpells.ts";
import { allStations, type LessonValue } from "./lessonValue.ts";
import type { CellRun, Spell } from "./spells.ts";

/** What was found of a lesson so far. */
export interface Findings {
  readonly run: (cell: string) => CellRun;
  /** A moment with the name of its cell; undefined where the record holds none. */
  readonly moment: (name: string) => (Spell & { readonly cell: string }) | undefined;
  readonly value: (name: string) => LessonValue | undefined;
}

/** Undefined where the record does not hold it. */
export function findValue(spec: ValueSpec, found: Findings): LessonValue | undefined {
  if ("moment" in spec) {
    const moment = found.moment(spec.moment);
    return moment && ofMoment(spec.by, moment, found.run(moment.cell));
  }
  if ("moments" in spec) {
    const [one, other] = spec.moments.map((name) => found.moment(name)?.start);
    return one === undefined || other === undefined ? undefined : inSeconds(other - one);
  }
  if ("pattern" in spec) return ofPattern(spec.by, spec.pattern, found.run(spec.pattern.cell));
  if ("cell" in spec) return ofCell(spec.by, found.run(spec.cell));
  const [one, other] = spec.values.map((name) => found.value(name));
  return one === undefined || other === undefined ? undefined : ofPair(spec.by, one, other);
}

const inSeconds = (number: number | null | undefined): LessonValue | undefined =>
  number === null || number === undefined ? undefined : { unit: "s", number };

const named = (name: string | null | undefined): LessonValue | undefined =>
  name === null || name === undefined ? undefined : { unit: "name", name };

function ofMoment(by: MomentMeasure, moment: Spell, run: CellRun): LessonValue | undefined {
  if (by === "start") return inSeconds(moment.start);
  if (by === "duration") return inSeconds(durationOf(moment));
  if (by === "resource" || by === "state" || by === "startedBy" || by === "freedBy") return named(moment[by]);
  if (by === "next")
    return named(run.spells.find(({ resource, start }) => resource === moment.resource && start === moment.end)?.state);
  const shot = shotRecords(run.events, run.scenario).find(
    (each) => each.station === moment.station && each.shot === moment.shot,
  );
  if (by === "sag") return shot === undefined || shot.sag === null ? undefined : { unit: "share", number: shot.sag };
  return inSeconds(shot?.[by]);
}

const durationOf = ({ start, end }: Spell): number | undefined => (end === null ? undefined : end - start);

function ofPattern(by: PatternMeasure, pattern: SpellPattern, run: CellRun): LessonValue | undefined {
  const spells = findSpells(pattern, run);
  if (by === "count") return { unit: "count", number: spells.length };
  const durations = spells.map(durationOf).filter((each) => each !== undefined);
  const total = durations.reduce((sum, each) => sum + each, 0);
  if (by === "total") return inSeconds(total);
  if (by === "share") {
    const { length } = run.scenario.run;
    const spent = spells.reduce((sum, { start, end }) => sum + (end ?? length) - start, 0);
    const resources = new Set(findSpells(ownersOf(pattern), run).map(({ resource }) => resource));
    return resources.size === 0 ? undefined : { unit: "share", number: spent / length / resources.size };
  }
  if (durations.length === 0) return undefined;
  if (by === "mean") return inSeconds(total / durations.length);
  return inSeconds(by === "shortest" ? Math.min(...durations) : Math.max(...durations));
}

const ownersOf = ({ cell, resource, of }: SpellPattern): SpellPattern => ({
  cell,
  ...(resource === undefined ? {} : { resource }),
  ...(of === undefined ? {} : { of }),
});

function ofCell(by: CellMeasure, run: CellRun): LessonValue | undefined {
  if (by === "pace") return named(paceSetter(run));
  if (by === "idealSecondsPerShot") return inSeconds(idealCycle(run.scenario).secondsPerShot);
  const rates = stationRates(run);
  if (rates === undefined) return undefined;
  const shots = rates.reduce((sum, { perSecond }) => sum + perSecond, 0);
  if (by === "secondsPerShot") return inSeconds(1 / shots);
  const parts = rates.reduce((sum, { perSecond, cavities }) => sum + perSecond * cavities, 0);
  return { unit: "an hour", number: 3600 * (by === "shotsPerHour" ? shots : parts) };
}

/** Null where the critical circuit leads through several resources. */
function paceSetter({ scenario }: CellRun): string | null {
  const critical = idealCycle(scenario).circuits.filter((circuit, i) => circuit.critical || i === 0);
  const names = critical.map(({ owner }) => owner && nameOfOwner(owner));
  const { stations } = scenario;
  // Equal stations whose order was found by running have a circuit each.
  if (stations.length > 1 && stations.every(({ name }) => names.includes(name))) return allStations;
  return names[0] ?? null;
}

function nameOfOwner(owner: CircuitOwner): string {
  if (owner.kind === "screw") return PLASTICATOR;
  return "name" in owner ? owner.name : owner.kind;
}

/** From the first to the last shot in the second half of the record, so that the way to a steady cycle does not count. */
function stationRates({ scenario, spells }: CellRun): readonly { perSecond: number; cavities: number }[] | undefined {
  const rates = scenario.stations.map(({ name, cavities }) => {
    const starts = spells
      .filter(({ resource, role, start }) => {
        const isShot = role !== null && shotRoles.includes(role);
        return resource === name && isShot && start >= scenario.run.length / 2;
      })
      .map(({ start }) => start);
    return { perSecond: (starts.length - 1) / (starts.at(-1)! - starts[0]!), cavities };
  });
  return rates.every(({ perSecond }) => perSecond > 0) ? rates : undefined;
}

function ofPair(by: PairMeasure, one: LessonValue, other: LessonValue): LessonValue | undefined {
  if (one.unit === "name" || other.unit === "name") return undefined;
  if (by === "ratio") return { unit: "ratio", number: one.number / other.number };
  if (by === "shareOf") return { unit: "share", number: one.number / other.number };
  return { unit: one.unit, number: one.number - other.number };
}
