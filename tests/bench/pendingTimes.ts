// A process of its own for the event list alone: prints nanoseconds for taking the earliest pending time and setting the next one.
import { EventList } from "#engine/eventList.ts";
import { openStream } from "#engine/stream.ts";
import { median } from "./median.ts";

const turns = 1_000_000;
const passes = 7;
const mostTicks = 1e7;

/** The hold model (Vaucher and Duval, 1975, from memory): the earliest is taken out and put back a drawn time later. */
function hold(list: EventList, increments: Float64Array): number {
  let now = 0;
  for (let turn = 0; turn < turns; turn++) {
    const process = list.first();
    now = list.due[process]!;
    list.clear(process);
    list.set(process, now + increments[turn & (increments.length - 1)]!);
  }
  return now;
}

const entities = Number(process.argv[2]);
const stream = openStream("bench", 0, "event list", "hold");
const increments = Float64Array.from({ length: 4096 }, () => Math.floor(stream() * mostTicks));
const list = new EventList(entities);
for (let entity = 0; entity < entities; entity++) list.set(entity, increments[entity]!);
hold(list, increments);
// What is pending in the last pass starts where the one before ended: ticks stay far below 2^53.
const taken = Array.from({ length: passes }, () => {
  const before = process.cpuUsage();
  hold(list, increments);
  const { user, system } = process.cpuUsage(before);
  return ((user + system) * 1000) / turns;
});
process.stdout.write(String(median(taken)));
