// A step table: what every process of a system does, written once as data that the simulation, the event graph and the words all read.
import type { Distribution } from "#engine/distributions/distribution.ts";

/** What a state means for the clock: time at work, time lost waiting, time lost to a stop, time to get ready for work, time out of use. */
type StateKind = "working" | "waiting" | "stopped" | "set-up" | "off";

export interface StateSpec {
  readonly name: string;
  readonly kind: StateKind;
}

/** Something that is in exactly one state at any time. */
export interface ResourceSpec {
  readonly name: string;
  /** The first is the state at time 0. */
  readonly states: readonly StateSpec[];
  /** State shown while a stop holds the resource; needed only where a step stops it. */
  readonly whenStopped?: string;
}

/**
 * Which of several processes that want the same tokens is served first; ties always go to the process listed first.
 *
 * `rotation` serves the takers in their listed order over and over, waits for one that is late and skips one that is stopped.
 * `urgency` goes by the priority of the step that waits, and among equals first-come.
 */
export type ServingRule = "first-come" | "longest-since-served" | "rotation" | "priority" | "urgency";

/** A place holds tokens: permissions, free servers, items in a buffer. Tokens leave in the order in which they came. */
export interface PlaceSpec {
  readonly name: string;
  /** Tokens at time 0; with `tokensBelow` a random number of more, from 0 up to below it, all equally likely. */
  readonly tokens: number;
  readonly tokensBelow?: number;
  readonly rule?: ServingRule;
  /** Which completion is named when several are latest at once: the lowest rank; a process's own step has rank 3. */
  readonly rank?: number;
  /** Number carried by the initial tokens; `numbered`: 0, 1, 2, … */
  readonly cargo?: number | "numbered";
}

/**
 * A process has two registers for numbers that tokens carry: `cargo`, what it works on, and `helper`, the resource that helps it.
 * With `by`, a named place or resource is the first of a family, `name 1`, `name 2`, …, and the register, counted from 0, chooses.
 */
export type Register = "cargo" | "helper";

export interface NeedSpec {
  readonly place: string;
  readonly by?: Register;
  /** Tokens taken at once; 1 if not given. */
  readonly count?: number;
  /** State of the process's own resource while this is the first need not met; if not given it keeps the state that it shows. */
  readonly meanwhile?: string;
  /**
   * States shown instead while another resource is in a state from which the wait comes; the first that holds. The stop of a
   * resource is also shown where nothing else keeps the step from starting.
   */
  readonly causes?: readonly CauseSpec[];
  /** The same while tokens are there and it is another's turn. */
  readonly whileOthersTurn?: string;
  /** While this is not there the process keeps the state that others show for it, whatever else it lacks. */
  readonly quiet?: true;
  /** Register into which the number that the token carries goes. */
  readonly takes?: Register;
}

export interface CauseSpec {
  readonly resource: string;
  readonly state: string;
  /** State of the process's own resource. */
  readonly shows: string;
}

export interface GiveSpec {
  readonly place: string;
  readonly by?: Register;
  readonly count?: number;
  /** Register whose number the token carries; `cargo` if not given. */
  readonly carries?: Register;
}

export interface ShowSpec {
  readonly resource: string;
  readonly by?: Register;
  /** One state, or one for each number that `cargo` may hold; the same for all of a family. */
  readonly state: string | readonly string[];
}

/** The distribution of a step's time in seconds, or, with an amount in milligrams, that of a rate in kg/s: the time is then amount / rate. */
export interface DrawnTime {
  readonly distribution: Distribution;
  readonly amount?: number;
  /** Every drawn time is multiplied by this; 1 if not given. */
  readonly factor?: number;
  /** Name of a trace: the values of an empirical distribution come in their order, shared by all steps that name it, and then again. */
  readonly trace?: string;
}

export interface TimeSpec {
  /** One distribution, or one for each number that `cargo` may hold. */
  readonly distributions: readonly DrawnTime[];
  /** Whose step this is in streams, records and shares; the process's own resource if not given. */
  readonly resource?: string;
  /** Name of the stream of draws; the step's name if not given. */
  readonly stream?: string;
  /** Takes the number that the stream gave last once more: one time that is passed in parts. */
  readonly again?: true;
  /**
   * The step lasts to this second of the run instead, whatever the distribution says, and no time where that is over; `timetable`:
   * to the next second of the process's timetable.
   */
  readonly until?: number | "timetable";
  /** The time passes only while this resource is in a working state. */
  readonly whileWorking?: string;
}

/**
 * A number that is drawn and judged, such as a mass. Whole millionths of the unit are compared.
 * What a process keeps is added to everything that it draws until it keeps another number.
 */
export interface ScaleSpec {
  readonly distribution: Distribution;
  /** Name of the stream of draws, and whose it is: the process's own resource if not given. */
  readonly stream: string;
  readonly resource?: string;
  /** Keeps the number and judges nothing. */
  readonly keeps?: true;
  /** Judges the number alone, without what is kept. */
  readonly alone?: true;
  /** Where the sum leaves these limits, the process leaves for another step. */
  readonly below?: { readonly limit: number; readonly next: string };
  readonly above?: { readonly limit: number; readonly next: string };
}

/** What a stop wants of the step under way. */
export type StopRule = "finish" | "hold" | "scrap";

/** What a stop does to a step under way: hold its remaining time, let it run on, or leave it at once for another step. */
export type StopEffect = "hold" | "run on" | { readonly leaveFor: string };

/** What happens to a stop, by the number of the stop. */
export interface StopMark {
  readonly stop: number;
  readonly phase: "begin" | "repair" | "end";
}

export interface StepSpec {
  readonly name: string;
  /** All are taken at once, as soon as all are there. */
  readonly needs?: readonly NeedSpec[];
  /** It stands in line even where no other process may want what it needs: what else happens at the instant comes first. */
  readonly standsInLine?: true;
  /** Under a place's `priority` rule, instead of the process's own priority while it waits for this step. */
  readonly priority?: number;
  /** How long the process waits for its needs before it leaves for another step. */
  readonly patience?: { readonly time: TimeSpec; readonly leaveFor: string };
  /** States entered when this step starts. */
  readonly shows?: readonly ShowSpec[];
  /** Absent where the step takes no time. */
  readonly time?: TimeSpec;
  /** The time is a timetable's or a timer's: it never binds what follows, which goes on from what came before. */
  readonly isClock?: true;
  /** What is weighed when the step ends. */
  readonly scale?: ScaleSpec;
  /** Tokens given when the step ends. */
  readonly gives?: readonly GiveSpec[];
  /** Counters raised, with the amounts, when the step ends. */
  readonly counts?: Readonly<Record<string, number>>;
  /** The entry for the log of stops when the step ends. */
  readonly stopMarks?: readonly StopMark[];
  /** Resources whose stop concerns this step; the process's own and those that it shows if not given. */
  readonly stoppedBy?: readonly string[];
  /** What each rule of a stop does to this step; `physics` runs on under every rule and starts even in a stop. */
  readonly stopped?: "physics" | Readonly<Partial<Record<StopRule, StopEffect>>>;
  /** Resource that stops when this step starts, and by which rule. */
  readonly stops?: { readonly resource: string; readonly rule: StopRule };
  /** Resource that goes on when this step ends. */
  readonly releases?: string;
  /** Name of the next step; if not given the following one, after the last the first. */
  readonly next?: string;
  /** The next step is the one that the timetable names beside the second to which this step lasts. */
  readonly turns?: true;
  /** With this chance the process goes there instead; `resource` names the stream, the process's own if not given. */
  readonly chance?: { readonly of: number; readonly next: string; readonly resource?: string };
}

/** Seconds of the run, and the number of a step of the process. */
interface TimetableEntry {
  readonly until: number;
  /** Needed where the step that lasts so long turns. */
  readonly leadsTo?: number;
}

export interface ProcessSpec {
  readonly name: string;
  /** The resource that shows this process's waiting states. */
  readonly resource: string;
  /** Under a place's `priority` rule the lowest number is served first. */
  readonly priority?: number;
  /** The number in `cargo` at the start. */
  readonly cargo?: number;
  /** Each step that lasts by the timetable takes the next entry; there must be enough. */
  readonly timetable?: readonly TimetableEntry[];
  /** Step with which the process begins; the first if not given. */
  readonly begins?: string;
  readonly steps: readonly StepSpec[];
}

/**
 * Processes are listed in the order in which they act within one instant and in which ties go.
 *
 * Within one instant everything that completes does so first; then places are served in their listed order, one process at a
 * time, and whatever that completes at once does so before the next is served.
 */
export interface StepTable {
  readonly resources: readonly ResourceSpec[];
  readonly places: readonly PlaceSpec[];
  readonly processes: readonly ProcessSpec[];
}
