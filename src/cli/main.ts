// The program as the build makes one script of it: what a call starts, and what a worker thread does.
import type { Work } from "#analysis/replication/work.ts";
import type { WorkerReply } from "#cli/labor/answerWork.ts";
import { openHost, type Host } from "#cli/machine/host.ts";
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
  const { answerWork } = await import("#cli/labor/answerWork.ts");
  return answerWork(work);
}
