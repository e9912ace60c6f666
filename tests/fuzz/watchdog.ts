// Ends the process where one input takes a minute of processor time: a hang cannot be caught from the thread that hangs.
import { Worker } from "node:worker_threads";

const seconds = 60;

/** Runs in a thread of its own; processor time, because a busy machine is no hang. */
const guard = `
  const { workerData } = require("node:worker_threads");
  const { writeSync } = require("node:fs");
  const [shared, label] = workerData;
  const used = () => { const { user, system } = process.cpuUsage(); return (user + system) / 1e6; };
  let [last, since] = [-1, used()];
  setInterval(() => {
    const number = Atomics.load(shared, 0);
    if (number !== last) [last, since] = [number, used()];
    else if (number >= 0 && used() - since > ${seconds}) {
      writeSync(2, "fuzz: input " + number + " of seed " + label + " takes more than ${seconds} s\\n");
      process.kill(process.pid, "SIGKILL");
    }
  }, 1000);
`;

/** Calls `act` with each number below `count`, under guard. */
export function underGuard(label: string, count: number, act: (number: number) => void): void {
  const shared = new Int32Array(new SharedArrayBuffer(4)).fill(-1);
  const worker = new Worker(guard, { eval: true, workerData: [shared, label] });
  worker.unref();
  try {
    for (let number = 0; number < count; number += 1) {
      Atomics.store(shared, 0, number);
      act(number);
    }
  } finally {
    void worker.terminate();
  }
}
