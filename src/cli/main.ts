// The program as the build makes one script of it: what a call starts, and what a worker thread does.
import type { Work } from "#analysis/work.ts";
import type { WorkerReply } from "./answerWork.ts";
import { openHost, type Host } from "./host.ts";
import { runProgram } from "./program.ts";
import { tellFailure } from "./tellFailure.ts";

/** Opens the host, runs the program, leaves its exit code behind; the caller ends the process. */
export async function start(argv: readonly string[]): Promise<Host> {
  const host = openHost();
  process.on("uncaughtException", (error) => host.leave(tellFailure(error, host, argv)));
  host.leave(await runProgram(argv, host));
  return host;
}

export async function answer(work: Work): Promise<WorkerReply> {
  const { answerWork } = await import("./answerWork.ts");
  return answerWork(work);
}
