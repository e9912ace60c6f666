// Prints how long each file of tests took, the slowest first, and all together.
import type { Reporter, TestModule } from "vitest/node";

function seconds(module: TestModule): number {
  const { setupDuration, collectDuration, duration } = module.diagnostic();
  return (setupDuration + collectDuration + duration) / 1000;
}

const line = (time: number, name: string) => `${time.toFixed(1).padStart(8)} s  ${name}\n`;

export default class FileTimes implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const times = modules.map((module) => [seconds(module), module.relativeModuleId] as const);
    const lines = times.toSorted(([a], [b]) => b - a).map(([time, name]) => line(time, name));
    const sum = times.reduce((total, [time]) => total + time, 0);
    process.stdout.write(`\n${lines.join("")}${line(sum, "all files")}`);
  }
}
