// From a wait back to what ended it, and on from completion to completion to the resource that sets the pace.
import { seconds as inSeconds } from "#report/words/digits.ts";
import { ownerName, nounOf } from "#report/words/tradeWords.ts";
import type { CrewTask } from "#scenario/scenario.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import type { StepRole } from "#cell/words/stepNames.ts";
import { resourceOf, rowAt, rowOf, type PlacedRow } from "./rowsOf.ts";
import type { RecordedResource, SceneRecord } from "./sceneRecord.ts";

/** A step on the way back, and how long what came after it waited for it. */
export interface WayLink {
  /** A resource of the record, so that the reader can go there. */
  readonly resource: string;
  /** The resource to which its time belongs, of those that it keeps busy; operators are one. */
  readonly owner: string;
  readonly step: string;
  readonly role: StepRole | null;
  readonly task: CrewTask | null;
  /** Seconds of the run: its start, and the completion that let the next step begin. */
  readonly from: number;
  readonly until: number;
  /** Another completion was as late. */
  readonly isTied: boolean;
  /** Such as "the screw: recharging". */
  readonly words: string;
}

export interface WayBack {
  /** From the wait backwards, up to the first step that comes again, or to the beginning of the record. */
  readonly links: readonly WayLink[];
  /** The resource that holds the largest part of the closed way, and its seconds of all of them; null where the way does not close. */
  readonly pace: Pace | null;
}

interface Pace {
  readonly resource: string;
  readonly seconds: number;
  readonly of: number;
  /** Such as "The screw sets the pace here: 3.63 of 5.29 s of the way back." */
  readonly words: string;
}

/** A step may come from so many others before it comes again. */
const mostLinks = 200;

/** From a wait back to what ends it; from any other state, to what let it begin. */
export function wayBack(record: SceneRecord, resource: string, seconds: number): WayBack {
  const recorded = resourceOf(record, resource);
  const row = rowAt(record, recorded, seconds);
  const start = isWait(row) ? endOfWait(record, recorded, row) : row;
  return start ? wayFrom(record, start) : { links: [], pace: null };
}

export function isWait({ kind, state }: Pick<PlacedRow, "kind" | "state">): boolean {
  return kind === "waiting" || kind === "stopped" || setUpWaits.includes(state);
}

/** Waits for the set-up of another resource. */
const setUpWaits: readonly string[] = [stateNames.awaitingHeatUp, stateNames.awaitingPurge];

/** The row with which the resource goes on, be it to wait for something else after a step; undefined where the record ends first. */
export function endOfWait(record: SceneRecord, resource: RecordedResource, wait: PlacedRow): PlacedRow | undefined {
  for (let number = wait.number + 1; number < resource.rows.count; number++) {
    const row = rowOf(record, resource, number);
    const isStart = row.bound !== -1 && row.kind !== "stopped" && row.state !== wait.state;
    if (!isWait(row) || isStart) return row;
  }
  return undefined;
}

function wayFrom(record: SceneRecord, start: PlacedRow): WayBack {
  const links: WayLink[] = [];
  const known = new Map<number, number>();
  let until = start.seconds;
  for (let link = start.bound; link !== -1 && links.length < mostLinks; link = record.links.before[link]!) {
    const activity = record.links.activity[link]!;
    const again = known.get(activity);
    if (again !== undefined) return { links, pace: paceOf(record, links.slice(again)) };
    known.set(activity, links.length);
    const found = wayLink(record, link, until);
    if (!isMoment(found)) links.push(found);
    until = record.links.seconds[link]!;
  }
  return { links, pace: null };
}

/** A wait that was given up at once, such as a look at a clock, is no step. */
const isMoment = ({ role, from, until }: WayLink): boolean => role === null && from === until;

/** The completion that ended a wait. */
export function freeingLink(record: SceneRecord, { bound, seconds }: PlacedRow): WayLink | null {
  for (let link = bound; link !== -1; link = record.links.before[link]!) {
    const found = wayLink(record, link, seconds);
    if (!isMoment(found)) return found;
  }
  return null;
}

export function wayLink(record: SceneRecord, link: number, until: number): WayLink {
  const { links } = record;
  const { resource, owner, step, process, role, task } = links.activities[links.activity[link]!]!;
  const shown = placeOf(record, resource, process);
  return {
    resource: shown,
    owner: placeOf(record, owner, process),
    step,
    role,
    task,
    from: links.seconds[link]!,
    until,
    isTied: links.tied[link] === 1,
    words: linkWords(ownerName(shown), role, nounOf({ step, ...(role ? { role } : {}), ...(task ? { task } : {}) })),
  };
}

function linkWords(owner: string, role: StepRole | null, noun: string): string {
  if (role === "stop.stand") return `the end of the stop of ${owner}`;
  if (role === "crew.walk") return `an operator's walk to ${owner}`;
  return noun === owner ? owner : `${owner}: ${noun}`;
}

/** The places of a server share its steps: the process says which place it is. */
function placeOf({ resources }: SceneRecord, resource: string, process: string): string {
  const isKnown = (name: string): boolean => resources.some((each) => each.name === name);
  if (isKnown(process) && !isKnown(resource)) return process;
  return isKnown(resource) ? resource : (resources.find(({ group }) => group === resource)?.name ?? resource);
}

/** The first operator stands for all. */
function setter({ resources }: SceneRecord, name: string): string {
  const isOperator = resources.some((each) => each.name === name && each.kind === "operator");
  if (isOperator && resources.filter(({ kind }) => kind === "operator").length > 1) return "The operators set";
  const owner = ownerName(name);
  return `${owner.startsWith("the ") ? `The ${owner.slice(4)}` : owner} sets`;
}

function paceOf(record: SceneRecord, loop: readonly WayLink[]): Pace | null {
  const times = new Map<string, number>();
  for (const { owner, from, until } of loop) times.set(owner, (times.get(owner) ?? 0) + until - from);
  const [most] = [...times].toSorted(([, one], [, other]) => other - one);
  const of = [...times.values()].reduce((sum, each) => sum + each, 0);
  if (!most || of <= 0) return null;
  const [resource, held] = most;
  const share = `${inSeconds(held).replace(" s", "")} of ${inSeconds(of)}`;
  return {
    resource,
    seconds: held,
    of,
    words: `${setter(record, resource)} the pace here: ${share} of the way back.`,
  };
}
