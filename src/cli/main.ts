// The program as one script: the start of a call, and the task of a worker thread.
import type { Parcel, WorkerReply } from "#cli/labor/answerWork.ts";
import { openHost, type Host } from "#cli/machine/host.ts";
import { runProgram } from "./program.ts";
import { reportFailure } from "./reportFailure.ts";

/** Opens the host, runs the program and sets the exit code; the caller ends the process. */
export async function start(argv: readonly string[]): Promise<Host> {
  const host = openHost();
  process.on("uncaughtException", (error) => host.leave(reportFailure(error, host, argv)));
  host.leave(await runProgram(argv, host));
  return host;
}

export async function answer(parcel: Parcel): Promise<WorkerReply> {
  const { answerWork } = await import("#cli/labor/answerWork.ts");
  return answerWork(parcel);
}
