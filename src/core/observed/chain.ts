// The critical path: every timed step stores the completion that bound its start; folded, so that a year fits in memory.
import { pauseSoon } from "../state/pause.ts";
import { endOfProcesses, firstProcess, Process } from "../state/process.ts";
import { OWNED } from "../border/numbers.ts";
import { room, roomier, wholeAt } from "../state/sections.ts";
import { placeAt, placeCount, Token } from "../state/tokens.ts";

// A forest of links from each timed step back to the step whose completion bound its start. The time from a node's start to the
// start of its child belongs to the node's activity, so that a walk back from any node tiles the time without gap or overlap.
//
// Folding keeps the live nodes and those where their paths meet; what lies between two kept nodes is summed up by activity. So
// at most twice as many nodes survive a fold as there are live ones, exactly and whatever the length of the run.

/** A timed step. */
@unmanaged
class Node {
  start: f64 = 0;
  /** The node that bound its start, -1 at the beginning; after a fold the next one that was kept. */
  parent: i32 = 0;
  /** Twice its activity, and 1 more where another step was complete as late. */
  mark: i32 = 0;
}

/** What a fold finds out about a node. */
@unmanaged
class Fate {
  isOnTheWay: bool = false;
  isKept: bool = false;
  renumbered: i32 = 0;
}

/** A node that a fold keeps. */
@unmanaged
class Survivor {
  node: i32 = 0;
  /** New number of its parent. */
  parent: i32 = 0;
  /** Of the edge to its parent: where its sums begin, -1 where that edge was not folded, and how many there are. */
  sums: i32 = 0;
  sumCount: i32 = 0;
}

/** What a folded edge holds of one activity: ticks, and the tied part of them. */
@unmanaged
class Sum {
  ticks: f64 = 0;
  tied: f64 = 0;
  activity: i32 = 0;
  unused: i32 = 0;
}

/** A fold copies the sums of what it keeps: where much is alive, as many nodes for each of these come before the next fold. */
const NODES_A_SURVIVOR = 8;

let activities = 0;
let foldAt = 0;
let nextFold = 0;
/** From so many nodes on there is something to do about it: to fold the chain, or to make room. */
let watched = 0;
let size = 0;
/** At first what is usually held, and some more, since a fold waits for the end of an instant. */
let capacity = 2304;
let nodes: usize = 0;

/** Of the last fold. */
let survivors: usize = 0;
let survivorCount = 0;
/** Of each folded edge, from the start of the parent to the start of the node: one for each activity on the way. */
let sums: usize = 0;
let sumsRoom = 256;

// Of the fold under way.
let fates: usize = 0;
let nextSurvivors: usize = 0;
let fateRoom = 0;
let nextSums: usize = 0;
let nextSumsRoom = 256;
let nextSumsUsed = 0;
/** Of the edge that is summed up: its first sum, and by activity where it stands, if it stands there. */
let edgeFrom = 0;
let places: usize = 0;

/** Of one walk back: ticks by activity, then the tied part of each; bytes of an activity. */
export let totals: usize = 0;
const totalSize: usize = 16;

/** `nodes` of the chain after which it is folded: what it holds does not depend on it. */
export function openChain(activityCount: i32, nodesHeld: i32): void {
  activities = activityCount;
  foldAt = nodesHeld;
  nextFold = nodesHeld;
  watched = min(nextFold, capacity);
  nodes = room(capacity, offsetof<Node>());
  totals = room(activities, totalSize);
  places = room(activities, sizeof<i32>());
  sums = room(sumsRoom, offsetof<Sum>());
  nextSums = room(nextSumsRoom, offsetof<Sum>());
}

/** True when the next nodes should be preceded by a fold. */
export function isChainFull(): bool {
  return size >= nextFold;
}

/** Adds a timed step that starts at this tick; `parent` is the node that bound it, or -1 at the beginning; `tied` is 1 where another one was complete as late. */
export function link(activity: i32, start: f64, parent: i32, tied: i32): i32 {
  const number = size++;
  if (number >= watched) makeWay();
  const node = nodeAt(number);
  node.start = start;
  node.parent = parent;
  node.mark = 2 * owned(activity, parent) + tied;
  return number;
}

/** An activity that keeps several resources busy belongs to the one that its start waited for. */
function owned(activity: i32, parent: i32): i32 {
  const row = wholeAt(OWNED, activity);
  return row === -1 || parent === -1 ? activity : wholeAt(OWNED, row + activityOf(parent));
}

/** The chain can be folded between two instants only: until then there must be room. */
function makeWay(): void {
  if (isChainFull()) pauseSoon();
  if (size > capacity) {
    nodes = roomier(nodes, capacity, offsetof<Node>());
    capacity *= 2;
  }
  watched = isChainFull() ? capacity : min(nextFold, capacity);
}

/** The node added last, -1 where there is none. */
export function lastNode(): i32 {
  return size - 1;
}

export function startOf(node: i32): f64 {
  return nodeAt(node).start;
}

export function activityOf(node: i32): i32 {
  return nodeAt(node).mark >> 1;
}

export function parentOf(node: i32): i32 {
  return nodeAt(node).parent;
}

export function isTied(node: i32): bool {
  return (nodeAt(node).mark & 1) === 1;
}

/** Adds up, in `totals`, the way back from `node` to the beginning, of what lies before `end`; later nodes must not have been folded. */
export function addTotals(node: i32, end: f64): void {
  memory.fill(totals, 0, <usize>activities * totalSize);
  let last = node;
  while (last !== -1 && startOf(last) > end) last = parentOf(last);
  if (last !== -1) addSpan(last, end, false);
  for (let at = last; at !== -1; at = parentOf(at)) addEdge(at, false);
}

/** Forgets all but the live nodes and the meeting points of their paths, and renumbers nodes where processes and tokens name them. */
export function foldChain(): void {
  makeRoom();
  for (let at = firstProcess; at < endOfProcesses; at += offsetof<Process>()) walkFrom(changetype<Process>(at).head);
  for (let number = 0; number < placeCount; number++) {
    const place = placeAt(number);
    let token: Token | null = place.first;
    for (let i = place.tokens; i > 0; i--) {
      walkFrom(token!.node);
      token = token!.following;
    }
  }
  nextSumsUsed = 0;
  let kept = 0;
  for (let node = 0; node < size; node++) if (fateOf(node).isKept) keep(node, kept++);
  adopt(kept);
  renumber();
}

/** Lets every live node begin anew at `tick`, as if nothing had been before: the end of a warm-up. */
export function restartChain(tick: f64): void {
  foldChain();
  for (let number = 0; number < size; number++) {
    const node = nodeAt(number);
    node.start = tick;
    node.parent = -1;
    survivorAt(survivors, number).sums = -1;
  }
}

function nodeAt(number: i32): Node {
  return changetype<Node>(nodes + <usize>number * offsetof<Node>());
}

function fateOf(node: i32): Fate {
  return changetype<Fate>(fates + <usize>node * offsetof<Fate>());
}

function survivorAt(among: usize, number: i32): Survivor {
  return changetype<Survivor>(among + <usize>number * offsetof<Survivor>());
}

function sumAt(among: usize, number: i32): Sum {
  return changetype<Sum>(among + <usize>number * offsetof<Sum>());
}

function makeRoom(): void {
  if (fateRoom < size) {
    fateRoom = capacity;
    fates = room(fateRoom, offsetof<Fate>());
    nextSurvivors = room(fateRoom, offsetof<Survivor>());
    const longer = room(fateRoom, offsetof<Survivor>());
    memory.copy(longer, survivors, <usize>survivorCount * offsetof<Survivor>());
    survivors = longer;
  } else memory.fill(fates, 0, <usize>size * offsetof<Fate>());
}

/** Kept are the live nodes and every node at which two ways meet. */
function walkFrom(live: i32): void {
  if (live === -1) return;
  fateOf(live).isKept = true;
  for (let at = live; !fateOf(at).isOnTheWay;) {
    fateOf(at).isOnTheWay = true;
    const parent = parentOf(at);
    if (parent === -1) return;
    if (fateOf(parent).isOnTheWay) fateOf(parent).isKept = true;
    at = parent;
  }
}

function keep(node: i32, number: i32): void {
  const parent = parentOf(node);
  const isFolded = parent !== -1 && !fateOf(parent).isKept;
  const survivor = survivorAt(nextSurvivors, number);
  survivor.node = node;
  edgeFrom = nextSumsUsed;
  const ancestor = isFolded ? foldWay(node) : parent;
  if (!isFolded) carrySums(node);
  survivor.sumCount = nextSumsUsed - edgeFrom;
  survivor.sums = survivor.sumCount > 0 ? edgeFrom : -1;
  // A parent is always older than its children: it has its new number by now.
  survivor.parent = ancestor === -1 ? -1 : fateOf(ancestor).renumbered;
  fateOf(node).renumbered = number;
}

/** The sums of an edge that stays as it is. */
function carrySums(node: i32): void {
  if (!isSummed(node)) return;
  const edge = survivorAt(survivors, node);
  while (nextSumsUsed + edge.sumCount > nextSumsRoom) makeRoomForSums();
  const to = changetype<usize>(sumAt(nextSums, nextSumsUsed));
  memory.copy(to, changetype<usize>(sumAt(sums, edge.sums)), <usize>edge.sumCount * offsetof<Sum>());
  nextSumsUsed += edge.sumCount;
}

/** Sums up the way back to the next node that is kept, and returns that. */
function foldWay(node: i32): i32 {
  let at = node;
  do {
    addEdge(at, true);
    at = parentOf(at);
  } while (at !== -1 && !fateOf(at).isKept);
  return at;
}

function makeRoomForSums(): void {
  nextSums = roomier(nextSums, nextSumsRoom, offsetof<Sum>());
  nextSumsRoom *= 2;
}

/** Whether the edge to its parent was folded. */
function isSummed(node: i32): bool {
  return node < survivorCount && survivorAt(survivors, node).sums !== -1;
}

function adopt(kept: i32): void {
  for (let number = 0; number < kept; number++) {
    const survivor = survivorAt(nextSurvivors, number);
    const from = nodeAt(survivor.node);
    const to = nodeAt(number);
    to.start = from.start;
    to.mark = from.mark;
    to.parent = survivor.parent;
  }
  const oldSurvivors = survivors;
  survivors = nextSurvivors;
  nextSurvivors = oldSurvivors;
  const oldSums = sums;
  sums = nextSums;
  nextSums = oldSums;
  const oldRoom = sumsRoom;
  sumsRoom = nextSumsRoom;
  nextSumsRoom = oldRoom;
  survivorCount = kept;
  size = kept;
  nextFold = max(foldAt, NODES_A_SURVIVOR * kept);
  watched = min(nextFold, capacity);
}

function renumber(): void {
  for (let at = firstProcess; at < endOfProcesses; at += offsetof<Process>()) {
    const process = changetype<Process>(at);
    if (process.head !== -1) process.head = fateOf(process.head).renumbered;
  }
  for (let number = 0; number < placeCount; number++) {
    const place = placeAt(number);
    let token: Token | null = place.first;
    for (let i = place.tokens; i > 0; i--) {
      if (token!.node !== -1) token!.node = fateOf(token!.node).renumbered;
      token = token!.following;
    }
  }
}

/** Adds what lies between the start of a node's parent and its own: to the edge that is summed up, or to the totals. */
function addEdge(node: i32, toEdge: bool): void {
  if (isSummed(node)) {
    const edge = survivorAt(survivors, node);
    for (let i = edge.sums; i < edge.sums + edge.sumCount; i++) {
      const sum = sumAt(sums, i);
      add(sum.activity, sum.ticks, sum.tied, toEdge);
    }
  } else if (parentOf(node) !== -1) addSpan(parentOf(node), startOf(node), toEdge);
}

function addSpan(node: i32, end: f64, toEdge: bool): void {
  const ticks = end - startOf(node);
  add(activityOf(node), ticks, isTied(node) ? ticks : 0, toEdge);
}

function add(activity: i32, ticks: f64, tied: f64, toEdge: bool): void {
  if (toEdge) {
    const sum = sumOfEdge(activity);
    sum.ticks += ticks;
    sum.tied += tied;
    return;
  }
  const at = totals + ((<usize>activity) << 3);
  const atTied = at + ((<usize>activities) << 3);
  store<f64>(at, load<f64>(at) + ticks);
  store<f64>(atTied, load<f64>(atTied) + tied);
}

/** The sum of an activity in the edge that is summed up; a place of an edge before this one does not count. */
function sumOfEdge(activity: i32): Sum {
  const place = places + ((<usize>activity) << 2);
  const known = load<i32>(place);
  if (known >= edgeFrom && known < nextSumsUsed && sumAt(nextSums, known).activity === activity)
    return sumAt(nextSums, known);
  if (nextSumsUsed === nextSumsRoom) makeRoomForSums();
  store<i32>(place, nextSumsUsed);
  const sum = sumAt(nextSums, nextSumsUsed++);
  sum.ticks = 0;
  sum.tied = 0;
  sum.activity = activity;
  return sum;
}
