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
/** A token is taken: its place, the place's rank, the register for its number, 1 for the first of the step, 1 for the last. */
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
 * Time passes: the (first) law, 1 where cargo chooses among several, the stream or -1 where the step draws in a way of its own,
 * the activity or -1 where it binds nothing, the clock or -1.
 */
export const TIME = 9;
/** A step without time has taken what it needed: the flow record is told. */
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
/** On to another step than the following one, or to a new cycle: where its code begins, 1 where that is a new cycle. */
export const NEXT = 18;

/** Where the code of a process that waits goes on when its patience is at an end. */
export const PATIENCE_ENDS = 1;

// Sections of whole numbers.

export const CODE = 0;
/** Of each row: where the process reaches it, and where the step starts when all that it needs is there. */
export const REACHED_AT = 1;
export const STARTS_AT = 2;
export const ROWS = 3;
/** What rows have several of: needs, gates, occupied resources. */
export const LISTS = 4;
export const DRAWS = 5;
export const SCALES = 6;
export const CARGO_AT_FIRST = 7;
export const OWN_RESOURCE = 8;
/** Of each resource. */
export const FIRST_STATE = 9;
export const STOPPED_STATE = 10;
export const STOPPED_ACTIVITY = 11;
/** Of each state: what it means to clocks and active periods, and its class for the time of all resources together. */
export const MEANING = 12;
/** Of each place the processes that take from it, and the places at which those stand in line who need it too; where each list begins, and one more. */
export const TAKERS_AT = 13;
export const TAKERS = 14;
export const LINES_AT = 15;
export const LINES = 16;
export const RULE = 17;
export const RANK = 18;
/** Of each resource the processes whose time passes only while it works. */
export const CLOCKED_AT = 19;
export const CLOCKED = 20;
/** Of each counter: 1 where every rise is kept. */
export const MARKED = 21;
export const WHOLE_SECTIONS = 22;

// Sections of real numbers.

/** Of each stream the four numbers of its generator. */
export const STREAMS = 0;
export const LAWS = 1;
export const QUANTILES = 2;
export const AMOUNTS = 3;
/** Of each row its priority and its chance. */
export const ROW_REALS = 4;
/** Of each draw the tick to which it lasts, below 0 where its laws say how long. */
export const UNTIL = 5;
/** Of each scale its limits. */
export const LIMITS = 6;
export const PRIORITY_AT_FIRST = 7;
export const REAL_SECTIONS = 8;

/** Numbers that a stream's generator keeps from draw to draw, and which of them is the number given last. */
export const STREAM_SIZE = 4;
export const LAST = 2;

// Of each law: its ticks where they do not vary, else below 0; where its quantile table begins, below 0 where it has none; …
export const LAW_SIZE = 6;
export const FIXED = 0;
export const TABLE = 1;
// … then those that the law's sampler has by the same names.
export const LOCATION = 2;
export const SCALE = 3;
export const LEAST = 4;
export const MASS = 5;

// Of each row.
export const ROW_SIZE = 21;
export const FLAGS = 0;
/** Where its lists begin, and how long they are. */
export const NEEDS_AT = 1;
export const NEEDS = 2;
export const GATES_AT = 3;
export const GATES = 4;
export const OCCUPIES_AT = 5;
export const OCCUPIES = 6;
/** By the rule of a stop, three. */
export const EFFECT = 7;
export const STOPS = 10;
export const STOPS_RULE = 11;
/** Draws and scales by their numbers, -1 where there is none. */
export const PATIENCE = 12;
export const PATIENCE_ACTIVITY = 13;
export const PATIENCE_NEXT = 14;
export const DRAW = 15;
export const ACTIVITY = 16;
export const CLOCK = 17;
export const WEIGHS = 18;
export const CHANCE_STREAM = 19;
export const CHANCE_NEXT = 20;

// Flags of a row.
export const TAKES_ALONE = 1;
export const WAITS_UNSEEN = 2;
export const IS_PHYSICS = 4;

// Of each need.
export const NEED_SIZE = 7;
export const PLACE = 0;
export const BY = 1;
export const TOKENS = 2;
export const MEANWHILE = 3;
export const OTHERS_TURN = 4;
export const IS_QUIET = 5;
export const TAKES = 6;

// Of each draw.
export const DRAW_SIZE = 4;
export const FIRST_LAW = 0;
export const LAW_COUNT = 1;
export const STREAM = 2;
export const AGAIN = 3;

// Of each scale.
export const SCALE_SIZE = 6;
export const SCALE_LAW = 0;
export const SCALE_STREAM = 1;
export const KEEPS = 2;
export const ALONE = 3;
export const BELOW_NEXT = 4;
export const ABOVE_NEXT = 5;

// Registers: the value of `by` and of `takes`.
export const NO_REGISTER = 0;
export const CARGO = 1;
export const HAND = 2;

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

// What a state means: the clocks that wait for a resource's work run; its active period goes on; its class stands above these.
export const WORKING = 1;
export const ACTIVE = 2;
export const CLASS = 4;

// Why nothing can go on.
export const DEADLOCK = 1;
export const ZERO_TIME_LOOP = 2;

// The quantile tables: cells of the body, which spans u from 0 to 1, and of each tail, which are so many times finer.
export const CELLS = 1024;
export const FINER = 32;
/** So many of the finest cells at either end are not interpolated at all. */
export const EXACT_CELLS = 8;
export const NODES = CELLS + 1;
/** Where the nodes of the body, of u < 1 / FINER and of u >= 1 - 1 / FINER begin. */
export const BODY = 0;
export const LOWER_TAIL = NODES;
export const UPPER_TAIL = 2 * NODES;
