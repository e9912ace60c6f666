// Ends the process on a signal after something begun is undone.
import { exitCode } from "./exitCode.ts";

const codes = {
  SIGINT: exitCode.interrupted,
  SIGTERM: exitCode.terminated,
  SIGHUP: exitCode.hungUp,
} as const;

/**
 * Until the returned function is called, SIGINT, SIGTERM and SIGHUP undo what was begun and then end the process. Node handles
 * a signal only between two pieces of work. At all other times the signals are left to the system, which ends the process at once.
 * As the first process of a container there is no such default: there the program calls this once, for its whole time.
 */
export function leaveOnSignals(undo: () => void = () => undefined): () => void {
  const handlers = Object.entries(codes).map(([signal, code]) => {
    const handle = (): void => {
      undo();
      process.exit(code);
    };
    process.on(signal, handle);
    return { signal, handle };
  });
  return () => {
    for (const { signal, handle } of handlers) process.off(signal, handle);
  };
}
