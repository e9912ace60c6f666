// The numbers by which the compiler of step tables and the core that runs them understand each other.

// Operations of the code, each with the numbers that follow it.

/** The process rests: time for the next event. */
export const REST = 0;
/** The process has waited as long as it will. */
export const GIVE_UP = 1;
/** A step is reached: its row. */
export const STEP = 2;
/** The step needs something, or the end of a stop, before it starts. */
export const NEED = 3;
/** A token is taken: its place, the register for its number, 1 for the first of the step, 1 for the last. */
export const TAKE = 4;
/** Tokens are taken where registers choose the place or where there are several. */
export const TAKE_ALL = 5;
/** The step stops a resource. */
export const STOP = 6;
/** States are shown: how many, and of each the resource and the state. */
export const SHOW = 7;
/** A state is shown where registers have a say: the resource, its register, how many states there are, and these. */
export const SHOW_CHOSEN = 8;
/**
 * Time passes: the (first) distribution, 1 where cargo chooses among several, the number of the draws that are made ahead or -1 where
 * the step draws when it starts, the activity or -1 where it binds nothing, the clock or -1, 1 where the next step may be done ahead of
 * the clock: it then follows with STEP, SHOW of one state and TIME.
 */
export const TIME = 9;
/** A step without time has taken what it needed: the flow record gets a node. */
export const PASS = 10;
/** A step whose end binds nothing is over. */
export const UNBIND = 11;
/** A token is given: its place. */
export const GIVE = 12;
/** Tokens are given where registers have a say, or several: the place, its register, how many, the register that they carry. */
export const GIVE_CHOSEN = 13;
/** A counter rises: the counter, the number of the amount. */
export const COUNT = 14;
/** A resource goes on: the resource. */
export const RELEASE = 15;
/** What was weighed decides whether the process goes on elsewhere. */
export const WEIGH = 16;
/** Chance decides whether the process goes on elsewhere. */
export const CHANCE = 17;
/** On to another step than the following one, or to a new cycle: the place of its code, 1 where that is a new cycle. */
export const NEXT = 18;
/** On to the step that the timetable names beside the tick to which the step lasted. */
export const TURN = 19;

/** Where in the code a process rests, and where it goes on when its patience is at an end. */
export const RESTS_AT = 0;
export const PATIENCE_ENDS_AT = 1;

/** A mark in memory: so many bytes, its tick a real number in front, its counter a whole number behind that. */
export const MARK_SIZE = 16;
export const MARK_COUNTER = 8;

/** Active periods after which the host should take them. */
export const MANY_PERIODS = 1024;

/** An entry of the event log in memory: so many bytes, two real numbers in front and whole numbers behind them, in the order of `Entry`. */
export const ENTRY_SIZE = 40;

// Sections of whole numbers. Records of one kind follow one another.

export const CODE = 0;
/** Of each step, in the order of `Step`. */
export const STEPS = 1;
/** Of each need, in the order of `Need`: this many numbers, of which the first names a place. */
export const NEEDS = 2;
export const NEED_SIZE = 10;
/** Resources that gates and steps name, and the causes of waits: what steps and needs have several of. */
export const LISTS = 3;
/** Of each way of drawing a time, in the order of `Draw`: this many numbers, of which the first names a distribution. */
export const DRAWS = 4;
export const DRAW_SIZE = 4;
/** Of each scale, in the order of `Scale`. */
export const SCALES = 5;
/** Of each process its resource and its first cargo. */
export const PROCESSES = 6;
/** Of each resource its first state, its state and its activity while it is stopped, how many clocks wait for its work, and who does its work or -1. */
export const RESOURCES = 7;
/** Processes whose time passes only while a resource works, one resource after the other. */
export const CLOCKED = 8;
/** Of each state: what it means to clocks, active periods and those that wait, and its class for the time of all resources together. */
export const MEANINGS = 9;
/** Of each place: its rule, its rank, how many processes take from it, and at how many places those stand in line who need it. */
export const PLACES = 10;
/** Those processes and those places, one place after the other. */
export const TAKERS = 11;
export const LINES = 12;
/** Of each counter: 1 where every rise is kept. */
export const MARKED = 13;
/** Of each kind of draws that are made ahead: the distribution, and the stream that gives numbers to nothing else. */
export const AHEAD = 14;
/** Of each activity where its row begins, or -1; then the rows: what the activity becomes, by the activity that bound its start. */
export const OWNED = 15;
/** Of each entry of a timetable the row to which it leads, one process after the other. */
export const TURNS = 16;

// Sections of real numbers.

/** Of each stream the four numbers of its generator. */
export const STREAMS = 0;
/** Of each distribution, in the order of `Distribution`. */
export const DISTRIBUTIONS = 1;
export const QUANTILES = 2;
export const AMOUNTS = 3;
/** Of each step its priority and its chance. */
export const STEP_REALS = 4;
/** Of each draw the tick to which it lasts, or below 0 what says how long. */
export const UNTIL = 5;
export const BY_DISTRIBUTION = -1;
export const BY_TIMETABLE = -2;
/** Of each scale its limits. */
export const LIMITS = 6;
/** Of each process. */
export const PRIORITIES = 7;
/** Of each entry of a timetable its tick, one process after the other. */
export const TIMETABLE = 8;

/** Numbers of each distribution; the first is its ticks where they do not vary, else below 0. */
export const DISTRIBUTION_SIZE = 6;
export const FIXED = 0;

// Flags of a step.
export const TAKES_ALONE = 1;
export const WAITS_UNSEEN = 2;
export const IS_PHYSICS = 4;

// Registers: the value of `by` and of `takes`.
export const NO_REGISTER = 0;
export const CARGO = 1;
export const HELPER = 2;

// Effects of a stop on a step under way; any other number is the row to leave for.
export const RUNS_ON = -1;
export const HOLDS = -2;

// Serving rules.
export const FIRST_COME = 0;
export const LONGEST_SINCE_SERVED = 1;
export const BY_PRIORITY = 2;
export const ROTATION = 3;
export const URGENCY = 4;

/** Rank of a process's own step among completions that are latest at once. */
export const OWN_RANK = 3;

// What a process is doing: between steps, waiting for needs, in a timed step, in one that is held or whose clock stands still.
export const IDLE = 0;
export const NEEDING = 1;
export const TIMED = 2;
export const HELD = 3;
export const STILL = 4;

// What a state means: the clocks that wait for a resource's work run; its active period goes on; the number of the cause that it is for
// those that wait, 0 where it is none; its class stands above these.
export const WORKING = 1;
export const ACTIVE = 2;
export const CAUSE = 4;
export const CLASS = 256;
/** All bits of the cause. */
export const CAUSES = CLASS - CAUSE;

// Why nothing can go on.
export const DEADLOCK = 1;
export const ZERO_TIME_LOOP = 2;

// The quantile tables: cells of the body, which spans u from 0 to 1, and of each tail, which are so many times finer.
export const CELLS = 1024;
export const FINER = 32;
/** Of the finest cells so many at either end are not interpolated: there draws are exact. */
export const EXACT_CELLS = 8;
export const NODES = CELLS + 1;
/** Where the nodes of the body, of u < 1 / FINER and of u >= 1 - 1 / FINER begin. */
export const BODY = 0;
export const LOWER_TAIL = NODES;
export const UPPER_TAIL = 2 * NODES;
