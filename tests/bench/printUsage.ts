// Loaded before a measured program: prints the processor time of its process when it ends.
import { writeSync } from "node:fs";

process.on("exit", () => {
  const { userCPUTime } = process.resourceUsage();
  writeSync(1, JSON.stringify({ seconds: userCPUTime / 1e6 }));
});
