// The binding chain: every timed step remembers the one completion that bound its start; folded, so that a year fits in memory.
import { longerReals, longerWholes } from "./longer.ts";
import { count, head } from "./processes.ts";
import { noReals, noWholes } from "./tables.ts";
import { listTokens, nodes as tokenNodes, tokenSlots } from "./tokens.ts";

// A forest of links from each timed step back to the step whose completion bound its start. The time from a node's start to the
// start of its child belongs to the node's activity, so that a walk back from any node tiles the time without gap or overlap.
//
// Folding keeps the live nodes and those where their paths meet; what lies between two kept nodes is summed up by activity. So
// at most twice as many nodes survive a fold as there are live ones, exactly and whatever the length of the run.

let activities = 0;
let foldAt = 0;
let nextFold = 0;
let size = 0;
let starts = noReals;
/** Of each node its parent and, in the next place, twice its activity and 1 where it is tied. */
let links = noWholes;
/** Of the nodes that survived the last fold: the number of their sums, -1 where the edge to the parent was not folded. */
let sumsOf = noWholes;
let survivors = 0;
/** Where an edge was folded: ticks by activity from the start of the parent to this node's start, then the tied part of each. */
let sums = noReals;
/** Those of the fold under way. */
let newSums = noReals;
let newSumsUsed = 0;

/** Of each node while the chain is folded: 1 where it is kept, 1 where a way leads over it, and its new number. */
let keep = noWholes;
let ways = noWholes;
let renumbered = noWholes;
/** Of each kept node: its old number, the new number of its parent, and its sums. */
let keptNode = noWholes;
let keptParent = noWholes;
let keptSums = noWholes;

/** Of one walk back: ticks by activity, then the tied part of each. */
export let totalTicks = noReals;

/** `nodes` of the chain after which it is folded: what it holds does not depend on it. */
export function openChain(activityCount: i32, nodes: i32): void {
  activities = activityCount;
  foldAt = nodes;
  nextFold = nodes;
  starts = new StaticArray<f64>(1024);
  links = new StaticArray<i32>(2 * 1024);
  totalTicks = new StaticArray<f64>(2 * activities);
  sums = new StaticArray<f64>(2 * activities);
  newSums = new StaticArray<f64>(2 * activities);
}

/** True when the next nodes should be preceded by a fold. */
export function isChainFull(): bool {
  return size >= nextFold;
}

/** Adds a timed step that starts at this tick; `parent` is the node that bound it, or -1 at the beginning; `tied` is 1 where another one was complete as late. */
export function link(activity: i32, start: f64, parent: i32, tied: i32): i32 {
  const node = size++;
  if (node === starts.length) {
    starts = longerReals(starts);
    links = longerWholes(links);
  }
  unchecked((starts[node] = start));
  unchecked((links[2 * node] = parent));
  unchecked((links[2 * node + 1] = 2 * activity + tied));
  return node;
}

/** The node added last, -1 where there is none. */
export function lastNode(): i32 {
  return size - 1;
}

export function startOf(node: i32): f64 {
  return unchecked(starts[node]);
}

export function activityOf(node: i32): i32 {
  return unchecked(links[2 * node + 1]) >> 1;
}

export function isTied(node: i32): bool {
  return (unchecked(links[2 * node + 1]) & 1) === 1;
}

/** The node that bound this one's start, -1 at the beginning; after a fold the next one that was kept. */
export function parentOf(node: i32): i32 {
  return unchecked(links[2 * node]);
}

/** Adds up, into `totalTicks`, the way back from `node` to the beginning, of what lies before `end`; later nodes must not have been folded. */
export function addTotals(node: i32, end: f64): void {
  totalTicks.fill(0);
  let last = node;
  while (last !== -1 && unchecked(starts[last]) > end) last = parentOf(last);
  if (last !== -1) addSpan(totalTicks, 0, last, end);
  addWay(totalTicks, 0, last, -1);
}

/** Forgets all but the live nodes and the meeting points of their paths, and tells those who name nodes their new numbers. */
export function foldChain(): void {
  makeRoom();
  const tokens = listTokens();
  for (let process = 0; process < count; process++) walkFrom(unchecked(head[process]));
  for (let i = 0; i < tokens; i++) walkFrom(unchecked(tokenNodes[unchecked(tokenSlots[i])]));
  newSumsUsed = 0;
  let kept = 0;
  for (let node = 0; node < size; node++) {
    if (unchecked(keep[node]) === 0) continue;
    const ancestor = keptAncestor(node);
    unchecked((keptNode[kept] = node));
    // A parent is always older than its children: it has its new number by now.
    unchecked((keptParent[kept] = ancestor === -1 ? -1 : renumbered[ancestor]));
    unchecked((keptSums[kept] = ancestor === parentOf(node) ? carriedSums(node) : foldedSums(node, ancestor)));
    unchecked((renumbered[node] = kept++));
  }
  adopt(kept);
  for (let process = 0; process < count; process++) {
    const node = unchecked(head[process]);
    if (node !== -1) unchecked((head[process] = renumbered[node]));
  }
  for (let i = 0; i < tokens; i++) {
    const slot = unchecked(tokenSlots[i]);
    const node = unchecked(tokenNodes[slot]);
    if (node !== -1) unchecked((tokenNodes[slot] = renumbered[node]));
  }
}

/** Lets every live node begin anew at `tick`, as if nothing had been before: the end of a warm-up. */
export function restartChain(tick: f64): void {
  foldChain();
  for (let node = 0; node < size; node++) {
    unchecked((starts[node] = tick));
    unchecked((links[2 * node] = -1));
    unchecked((sumsOf[node] = -1));
  }
}

function makeRoom(): void {
  if (keep.length < size) {
    const room = starts.length;
    keep = new StaticArray<i32>(room);
    ways = new StaticArray<i32>(room);
    renumbered = new StaticArray<i32>(room);
    keptNode = new StaticArray<i32>(room);
    keptParent = new StaticArray<i32>(room);
    keptSums = new StaticArray<i32>(room);
  }
  memory.fill(changetype<usize>(keep), 0, <usize>size << 2);
  memory.fill(changetype<usize>(ways), 0, <usize>size << 2);
}

/** Kept are the live nodes and every node at which two ways meet. */
function walkFrom(live: i32): void {
  if (live === -1) return;
  unchecked((keep[live] = 1));
  for (let at = live; unchecked(ways[at]) === 0; ) {
    unchecked((ways[at] = 1));
    const parent = parentOf(at);
    if (parent === -1) return;
    if (unchecked(ways[parent]) !== 0) unchecked((keep[parent] = 1));
    at = parent;
  }
}

function keptAncestor(node: i32): i32 {
  let at = parentOf(node);
  while (at !== -1 && unchecked(keep[at]) === 0) at = parentOf(at);
  return at;
}

/** The sums of an edge that stays as it is. */
function carriedSums(node: i32): i32 {
  const old = sumsBefore(node);
  if (old === -1) return -1;
  const number = openSums();
  const length = 2 * activities;
  for (let i = 0; i < length; i++) unchecked((newSums[number * length + i] = sums[old * length + i]));
  return number;
}

function foldedSums(node: i32, ancestor: i32): i32 {
  const number = openSums();
  addWay(newSums, number * 2 * activities, node, ancestor);
  return number;
}

function openSums(): i32 {
  const length = 2 * activities;
  const from = newSumsUsed * length;
  while (newSums.length < from + length) newSums = longerReals(newSums);
  for (let i = from; i < from + length; i++) unchecked((newSums[i] = 0));
  return newSumsUsed++;
}

function sumsBefore(node: i32): i32 {
  return node < survivors ? unchecked(sumsOf[node]) : -1;
}

function adopt(kept: i32): void {
  if (sumsOf.length < kept) sumsOf = new StaticArray<i32>(2 * kept);
  for (let i = 0; i < kept; i++) {
    const node = unchecked(keptNode[i]);
    unchecked((starts[i] = starts[node]));
    unchecked((links[2 * i] = keptParent[i]));
    unchecked((links[2 * i + 1] = links[2 * node + 1]));
    unchecked((sumsOf[i] = keptSums[i]));
  }
  const old = sums;
  sums = newSums;
  newSums = old;
  survivors = kept;
  size = kept;
  // Where very much is alive, as in a queue that grows, folding again at once would be in vain.
  nextFold = max(foldAt, 2 * kept);
}

/** Adds what lies between the start of `ancestor` (-1: the beginning) and the start of `node`. */
function addWay(to: StaticArray<f64>, from: i32, node: i32, ancestor: i32): void {
  const length = 2 * activities;
  for (let at = node; at !== ancestor; ) {
    const parent = parentOf(at);
    const folded = sumsBefore(at);
    if (folded !== -1) {
      for (let i = 0; i < length; i++) unchecked((to[from + i] = to[from + i] + sums[folded * length + i]));
    } else if (parent !== -1) addSpan(to, from, parent, unchecked(starts[at]));
    at = parent;
  }
}

function addSpan(to: StaticArray<f64>, from: i32, node: i32, end: f64): void {
  const activity = activityOf(node);
  const ticks = end - unchecked(starts[node]);
  unchecked((to[from + activity] = to[from + activity] + ticks));
  if (isTied(node)) {
    const tied = from + activities + activity;
    unchecked((to[tied] = to[tied] + ticks));
  }
}
